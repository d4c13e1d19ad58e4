using Traceability.Domain.Quality.Yields;

namespace Traceability.Domain.Quality.Reports;

/// <summary>A share from 0 to 1 with its 95 % interval and what it rests on, or why there is none.</summary>
/// <param name="Value" example="0.93">The share; null when it cannot be given.</param>
/// <param name="Lower" example="0.84">The lower end of its interval.</param>
/// <param name="Upper" example="0.97">The upper end.</param>
/// <param name="Passed" example="56">Passed of <paramref name="Of"/>; null for a yield over stages.</param>
/// <param name="Of" example="60">Parts judged; for a yield over stages the stages it is the product of.</param>
/// <param name="NotEnough" example="nothing was judged">Why there is no share.</param>
public sealed record ReportedShare(double? Value, double? Lower, double? Upper, int? Passed, int Of, string? NotEnough)
{
    /// <summary>A first-pass yield of counts.</summary>
    public static ReportedShare FirstPass(int passed, int judged) =>
        FirstPassYield
            .Of(passed, judged)
            .Match(
                y => new ReportedShare(y.Value, y.Interval.Lower, y.Interval.Upper, passed, judged, null),
                missing => new(null, null, null, passed, judged, missing.ToString())
            );

    /// <summary>A rolled-throughput yield of the counts of each stage.</summary>
    public static ReportedShare Rolled(IReadOnlyList<(int PassedFirst, int Judged)> stages) =>
        RolledThroughputYield
            .Of(stages)
            .Match(
                y => new ReportedShare(y.Value, y.Interval.Lower, y.Interval.Upper, null, stages.Count, null),
                missing => new(null, null, null, null, stages.Count, missing.ToString())
            );

    /// <summary>A yield over stages, of which some parts have not reached every one.</summary>
    public static ReportedShare OverStages(Computed<YieldOverStages> yield) =>
        yield.Match(
            y => new ReportedShare(y.Value, y.Interval.Lower, y.Interval.Upper, null, y.Stages, null),
            missing => new(null, null, null, null, 0, missing.ToString())
        );
}
