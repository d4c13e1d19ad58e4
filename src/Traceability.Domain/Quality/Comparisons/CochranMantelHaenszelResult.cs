namespace Traceability.Domain.Quality.Comparisons;

/// <summary>The answer of <see cref="CochranMantelHaenszel"/>.</summary>
/// <param name="ChiSquareCorrected">The statistic with continuity correction, one degree of freedom.</param>
/// <param name="PCorrected">Its p, the one to act on.</param>
/// <param name="ChiSquare">The statistic without correction.</param>
/// <param name="P">Its p.</param>
/// <param name="CommonOddsRatio">The Mantel-Haenszel odds ratio common to all strata; 0 or infinite when one diagonal is empty in every
/// stratum.</param>
/// <param name="OddsRatioInterval">
/// The Robins-Breslow-Greenland interval; 0 to infinity (nothing is known) when one diagonal is empty in every stratum.
/// </param>
/// <param name="StrataUsed">How many strata could be compared.</param>
/// <param name="StrataWithoutComparison">How many strata said nothing: only one group or only one result in them.</param>
public sealed record CochranMantelHaenszelResult(
    double ChiSquareCorrected,
    double PCorrected,
    double ChiSquare,
    double P,
    double CommonOddsRatio,
    Interval OddsRatioInterval,
    int StrataUsed,
    int StrataWithoutComparison
);
