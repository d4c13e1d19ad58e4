namespace Traceability.Domain.Quality.Intervals;

/// <summary>Guards the two counts of a proportion.</summary>
internal static class ProportionCount
{
    /// <summary>Throws unless 0 &lt;= k &lt;= n; answers what is missing when n is 0.</summary>
    public static NotEnoughData? Missing(int successes, int trials)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(trials);
        ArgumentOutOfRangeException.ThrowIfNegative(successes);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(successes, trials);
        return trials == 0 ? new NotEnoughData("parts", 1, 0) : null;
    }
}
