using Traceability.Domain.Quality;
using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.Yields;

namespace Traceability.Web.Features.Quality.Analyses;

/// <summary>A share with its interval and the counts behind it; or, in words, why there is none.</summary>
public sealed record Share(double? Value, double? Lower, double? Upper, int? Passed, int? Of, string? NotEnough)
{
    /// <summary>A first-pass yield, with the exact interval when that was asked for.</summary>
    public static Share From(Computed<FirstPassYield> answer, bool exact) =>
        answer.Match(y => Bounded(y.Value, exact ? y.ExactInterval : y.Interval, y.PassedFirst, y.Judged), Missing);

    /// <summary>A rolled-throughput yield; its count is the number of steps that it is the product of.</summary>
    public static Share From(Computed<RolledThroughputYield> answer) =>
        answer.Match(y => Bounded(y.Value, y.Interval, null, y.Steps.Count), Missing);

    /// <summary>A yield over stages; its count is the number of stages.</summary>
    public static Share From(Computed<YieldOverStages> answer) => answer.Match(y => Bounded(y.Value, y.Interval, null, y.Stages), Missing);

    /// <summary>The share behind two counts.</summary>
    public static Share From(int passed, int of, bool exact) => From(FirstPassYield.Of(passed, of), exact);

    private static Share Bounded(double value, Interval interval, int? passed, int of) =>
        new(value, interval.Lower, interval.Upper, passed, of, null);

    private static Share Missing(NotEnoughData missing) => new(null, null, null, null, null, missing.ToString());
}

/// <summary>
/// A comparison with all others: odds ratio with interval, p and how many strata it stands on; or why there is none. An odds ratio or an
/// end of its interval that is infinite is left out.
/// </summary>
public sealed record Comparison(double? OddsRatio, double? Lower, double? Upper, double? P, int? Strata, string? NotEnough)
{
    /// <summary>Fisher's exact test.</summary>
    public static Comparison Of(FisherExactResult f) =>
        new(Finite(f.OddsRatio), Finite(f.OddsRatioInterval.Lower), Finite(f.OddsRatioInterval.Upper), f.P, null, null);

    /// <summary>Fisher's exact test, or why there is none.</summary>
    public static Comparison Of(Computed<FisherExactResult> answer) => answer.Match(Of, Missing);

    /// <summary>The comparison inside strata, or why there is none.</summary>
    public static Comparison Of(Computed<CochranMantelHaenszelResult> answer) =>
        answer.Match(
            c => new Comparison(
                Finite(c.CommonOddsRatio),
                Finite(c.OddsRatioInterval.Lower),
                Finite(c.OddsRatioInterval.Upper),
                c.PCorrected,
                c.StrataUsed,
                null
            ),
            Missing
        );

    /// <summary>JSON has no infinity.</summary>
    public static double? Finite(double value) => double.IsFinite(value) ? value : null;

    private static Comparison Missing(NotEnoughData missing) => new(null, null, null, null, null, missing.ToString());
}
