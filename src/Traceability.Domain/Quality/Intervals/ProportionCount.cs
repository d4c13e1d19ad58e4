namespace Traceability.Domain.Quality.Intervals;

/// <summary>Guards the two counts of a proportion.</summary>
internal static class ProportionCount
{
    /// <summary>What is missing when n is 0; null when there is something to count.</summary>
    /// <exception cref="ArgumentOutOfRangeException">k or n below 0, or k above n.</exception>
    public static NotEnoughData? Missing(int successes, int trials)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(trials);
        ArgumentOutOfRangeException.ThrowIfNegative(successes);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(successes, trials);
        return trials == 0 ? new NotEnoughData("parts", 1, 0) : null;
    }
}
