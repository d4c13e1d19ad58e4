using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.Yields;

namespace Traceability.Domain.Quality.FilmLots;

/// <summary>What became of the diaphragms of one film lot, and whether that is worse than what became of all the others.</summary>
/// <param name="Lot">The film lot.</param>
/// <param name="Started">All its diaphragms.</param>
/// <param name="OnItsWay">Those that have neither failed nor got through; what is ahead of them counts neither way.</param>
/// <param name="Judged">Those that came to a verdict.</param>
/// <param name="PassedFirst">Those that got through everything without a failure; a capsule or unit counts once.</param>
/// <param name="PassedAfterRework">Those that failed somewhere and got through in the end.</param>
/// <param name="Failed">Those that failed somewhere, reworked or not; a capsule or unit counts once.</param>
/// <param name="FailedByPlace">How many first failed at each place; places without failures of this lot are absent.</param>
/// <param name="Stages">Of every stage that one of them reached how many reached it and failed there, over all strata; the field among
/// them.</param>
/// <param name="Yield">The yield over these stages, without the field unless that was asked about.</param>
/// <param name="AgainstTheRest">Fisher's exact test of this lot against all others: at the only stage (and stratum) that can be compared,
/// else of all counts together.</param>
/// <param name="WithinStages">
/// Mantel and Haenszel's comparison inside each stage, and inside each stratum of it, pooled: a lot that has not come to a difficult stage
/// yet is not better for it, and a busy builder or a bad week does not count against it.
/// </param>
/// <param name="IsStratified">True when there are several stages or strata that can be compared, so that <paramref name="WithinStages"/>
/// decides.</param>
/// <param name="P">The p to act on: within stages when <paramref name="IsStratified"/>, else Fisher's; null when neither is known.</param>
/// <param name="AdjustedP">P adjusted for all lots looked at (Benjamini-Hochberg); null when P is.</param>
public sealed record FilmLotFailures(
    string Lot,
    int Started,
    int OnItsWay,
    int Judged,
    int PassedFirst,
    int PassedAfterRework,
    int Failed,
    IReadOnlyDictionary<string, int> FailedByPlace,
    IReadOnlyList<LotStageCount> Stages,
    Computed<YieldOverStages> Yield,
    Computed<FisherExactResult> AgainstTheRest,
    Computed<CochranMantelHaenszelResult> WithinStages,
    bool IsStratified,
    double? P,
    double? AdjustedP
)
{
    /// <summary>When the latest of its diaphragms first failed; null when none did, or when it was not asked.</summary>
    public DateTimeOffset? LastFailure { get; init; }

    /// <summary>
    /// True when the lot fails more often than the rest, by the comparison that gave <see cref="P"/>, and the adjusted p is at most the
    /// rate given.
    /// </summary>
    /// <param name="falseDiscoveryRate">The share of false calls to put up with, 0.05 as a rule.</param>
    public bool IsWorse(double falseDiscoveryRate = 0.05) => AdjustedP <= falseDiscoveryRate && OddsRatio > 1;

    /// <summary>The odds ratio that belongs to <see cref="P"/>, or null: above 1 the lot fails more often than the rest.</summary>
    public double? OddsRatio =>
        P is null ? null
        : IsStratified ? WithinStages.Value.CommonOddsRatio
        : AgainstTheRest.Value.OddsRatio;
}
