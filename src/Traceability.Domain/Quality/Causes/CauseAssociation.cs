using Traceability.Domain.Quality.Comparisons;

namespace Traceability.Domain.Quality.Causes;

/// <summary>One level of one factor against all other levels of that factor.</summary>
/// <param name="Factor">The factor: "film lot".</param>
/// <param name="Level">The level: "F-0007".</param>
/// <param name="Table">Failed and passed with this level and with the others.</param>
/// <param name="Test">Fisher's exact test: odds ratio, interval and raw p.</param>
/// <param name="AdjustedP">The p adjusted for every level looked at (Benjamini-Hochberg).</param>
/// <param name="CannotBeToldFrom">Levels of other factors that nearly the same parts have: on these data the one may stand for the
/// other.</param>
/// <param name="GivenLeader">
/// The same comparison among parts with and without the leading level kept apart: what remains when the leader is allowed for. "Not enough
/// data" when nothing can be compared then; null for the leader itself and for lines too far down to be looked at.
/// </param>
public sealed record CauseAssociation(
    string Factor,
    string Level,
    FailureTable Table,
    FisherExactResult Test,
    double AdjustedP,
    IReadOnlyList<LookAlike> CannotBeToldFrom,
    Computed<CochranMantelHaenszelResult>? GivenLeader
)
{
    /// <summary>True when parts with this level fail more often than the others.</summary>
    public bool RaisesFailures => Test.OddsRatio > 1;

    /// <summary>
    /// True when the leader explains it: allowed for, the p is no longer at or below the level given, or nothing is left to compare.
    /// </summary>
    /// <param name="level">0.05 as a rule.</param>
    public bool IsExplainedByLeader(double level = 0.05) => GivenLeader is { } given && (!given.IsKnown || given.Value.PCorrected > level);

    /// <summary>True when it deserves a look: fails more often, survives the adjustment, and is not explained by the leader.</summary>
    /// <param name="falseDiscoveryRate">The share of false calls to put up with, 0.05 as a rule.</param>
    public bool StandsOut(double falseDiscoveryRate = 0.05) =>
        RaisesFailures && AdjustedP <= falseDiscoveryRate && !IsExplainedByLeader(falseDiscoveryRate);
}

/// <summary>A level of another factor that nearly the same parts have.</summary>
/// <param name="Factor">The other factor.</param>
/// <param name="Level">Its level.</param>
/// <param name="Overlap">Phi between having the one and having the other: 1 when exactly the same parts have both.</param>
public sealed record LookAlike(string Factor, string Level, double Overlap);
