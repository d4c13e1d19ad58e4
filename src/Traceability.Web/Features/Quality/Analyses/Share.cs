using Traceability.Domain.Quality;
using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.Yields;

namespace Traceability.Web.Features.Quality.Analyses;

/// <summary>A share with its 95 % interval and the counts behind it; or, in words, why there is none.</summary>
/// <param name="Value" example="0.925">The share, 0 to 1.</param>
/// <param name="Lower" example="0.801">Lower end of its interval, 0 to 1.</param>
/// <param name="Upper" example="0.974">Upper end of its interval, 0 to 1.</param>
/// <param name="Passed" example="37">How many passed; null for a product of shares.</param>
/// <param name="Of" example="40">Of how many; for a product of shares, the number of factors.</param>
/// <param name="NotEnough" example="not enough data: needs at least 1 parts, has 0">Why there is no share; null when there is one.</param>
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

/// <summary>A comparison with all others by odds ratio; or, in words, why there is none.</summary>
/// <param name="OddsRatio" example="2.7">How many times the odds of failing are those of the others; null when infinite.</param>
/// <param name="Lower" example="1.4">Lower end of its 95 % interval.</param>
/// <param name="Upper" example="5.2">Upper end of its 95 % interval; null when infinite.</param>
/// <param name="P" example="0.003">Probability of a difference at least as large by chance alone, 0 to 1, not adjusted.</param>
/// <param name="Strata" example="6">How many groups of like parts it stands on; null for one table.</param>
/// <param name="NotEnough" example="not enough data: needs at least 1 parts, has 0">
/// Why there is no comparison; null when there is one.
/// </param>
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
