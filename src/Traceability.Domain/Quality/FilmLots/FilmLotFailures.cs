using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.Yields;

namespace Traceability.Domain.Quality.FilmLots;

/// <summary>What became of the diaphragms of one film lot, and whether that is worse than what became of all the others.</summary>
/// <param name="Lot">The film lot.</param>
/// <param name="Started">All its diaphragms.</param>
/// <param name="InWork">Those that have neither failed nor passed their last stage; they count neither way.</param>
/// <param name="PassedFirst">Those that passed everything without a failure.</param>
/// <param name="PassedAfterRework">Those that failed somewhere and passed in the end.</param>
/// <param name="Failed">Those that failed somewhere, reworked or not.</param>
/// <param name="FailedByStage">How many first failed at each stage; stages without failures of this lot are absent.</param>
/// <param name="FirstPassYield">Passed first of those judged.</param>
/// <param name="RolledThroughputYield">The product over the stages, when their counts were given.</param>
/// <param name="AgainstTheRest">Fisher's exact test of this lot against all others together.</param>
/// <param name="WithinStrata">The same inside each stratum, pooled: a busy builder or a bad week does not count against the lot.</param>
/// <param name="IsStratified">True when there are several strata that can be compared, so that <paramref name="WithinStrata"/> decides.</param>
/// <param name="P">The p to act on: within strata when <paramref name="IsStratified"/>, else Fisher's; null when neither is known.</param>
/// <param name="AdjustedP">P adjusted for all lots looked at (Benjamini-Hochberg); null when P is.</param>
public sealed record FilmLotFailures(
    string Lot,
    int Started,
    int InWork,
    int PassedFirst,
    int PassedAfterRework,
    int Failed,
    IReadOnlyDictionary<string, int> FailedByStage,
    Answer<FirstPassYield> FirstPassYield,
    Answer<RolledThroughputYield> RolledThroughputYield,
    Answer<FisherExactResult> AgainstTheRest,
    Answer<CochranMantelHaenszelResult> WithinStrata,
    bool IsStratified,
    double? P,
    double? AdjustedP)
{
    /// <summary>When the latest of its diaphragms first failed; null when none did, or when it was not asked.</summary>
    public DateTimeOffset? LastFailure { get; init; }

    /// <summary>Those with a verdict: failed or passed first.</summary>
    public int Judged => Failed + PassedFirst;

    /// <summary>
    /// True when the lot fails more often than the rest, by the comparison that gave <see cref="P"/>, and the adjusted p is at most the rate given.
    /// </summary>
    /// <param name="falseDiscoveryRate">The share of false calls to put up with, 0.05 as a rule.</param>
    public bool IsWorse(double falseDiscoveryRate = 0.05) => AdjustedP <= falseDiscoveryRate && OddsRatio > 1;

    /// <summary>The odds ratio that belongs to <see cref="P"/>, or null: above 1 the lot fails more often than the rest.</summary>
    public double? OddsRatio =>
        P is null ? null : IsStratified ? WithinStrata.Value.CommonOddsRatio : AgainstTheRest.Value.OddsRatio;
}
