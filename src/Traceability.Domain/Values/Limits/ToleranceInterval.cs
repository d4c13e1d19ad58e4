namespace Traceability.Domain.Values.Limits;

/// <summary>What a characteristic may be.</summary>
/// <param name="Lower">Lowest allowed value; null when there is no lower limit.</param>
/// <param name="Upper">Highest allowed value; null when there is no upper limit.</param>
public readonly record struct ToleranceInterval(double? Lower, double? Upper)
{
    internal double LowerOrNone => Lower ?? double.NegativeInfinity;

    internal double UpperOrNone => Upper ?? double.PositiveInfinity;

    /// <summary>Guards what is judged by it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No limit, a limit that is not finite, or limits in the wrong order.</exception>
    internal void Check()
    {
        if (Lower is null && Upper is null)
            throw new ArgumentOutOfRangeException(nameof(Lower), "a tolerance needs at least one limit");
        if (Lower is { } low)
            Require.Finite(low, nameof(Lower));
        if (Upper is { } high)
            Require.Finite(high, nameof(Upper));
        if (Lower > Upper)
            throw new ArgumentOutOfRangeException(nameof(Upper), Upper, "must not lie below the lower limit");
    }
}
