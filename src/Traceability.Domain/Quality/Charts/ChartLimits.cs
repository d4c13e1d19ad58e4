namespace Traceability.Domain.Quality.Charts;

/// <summary>The centre line of a control chart and the limits around it, in the unit of what is drawn.</summary>
/// <param name="Lower" example="1137.4">The lower limit.</param>
/// <param name="Centre" example="1157.8">The centre line.</param>
/// <param name="Upper" example="1178.2">The upper limit.</param>
public readonly record struct ChartLimits(double Lower, double Centre, double Upper)
{
    /// <summary>True when the value lies beyond a limit; on the limit is not beyond.</summary>
    /// <param name="value">The value drawn.</param>
    public bool IsBeyond(double value) => value < Lower || value > Upper;
}
