using Traceability.Domain.Quality.Causes;
using Traceability.Web.Features.Quality.Analyses;

namespace Traceability.Web.Features.Quality.Causes;

/// <summary>
/// One level of one factor against its other levels. <c>GivenLeader</c> is the same comparison with the first line allowed for;
/// <c>ExplainedByLeader</c> says that nothing much is left then. <c>CannotBeToldFrom</c> names levels that nearly the same parts have.
/// </summary>
public sealed record CauseRow(
    int Rank,
    string Factor,
    string Level,
    int Failed,
    long Parts,
    int FailedElsewhere,
    long PartsElsewhere,
    Comparison Comparison,
    double AdjustedP,
    bool RaisesFailures,
    bool StandsOut,
    bool ExplainedByLeader,
    IReadOnlyList<LookAlike> CannotBeToldFrom,
    Comparison? GivenLeader
)
{
    /// <summary>The row of an association.</summary>
    public static CauseRow Of(CauseAssociation a, int rank) =>
        new(
            rank,
            a.Factor,
            a.Level,
            a.Table.FailedHere,
            a.Table.Here,
            a.Table.FailedElsewhere,
            a.Table.Elsewhere,
            Comparison.Of(a.Test),
            a.AdjustedP,
            a.RaisesFailures,
            a.StandsOut(),
            a.IsExplainedByLeader(),
            a.CannotBeToldFrom,
            a.GivenLeader is { } given ? Comparison.Of(given) : null
        );
}

/// <summary>
/// How far one factor goes with the measured value: Kruskal-Wallis (which ranks), Welch, effect sizes, and the level that lies furthest
/// out.
/// </summary>
public sealed record ValueCauseRow(
    int Rank,
    string Factor,
    int Values,
    int Levels,
    double KruskalWallis,
    double P,
    double AdjustedP,
    double EpsilonSquared,
    double? WelchF,
    double? WelchP,
    double OmegaSquared,
    string FurthestLevel,
    int FurthestValues,
    double FurthestMean,
    double MeanOfOthers,
    double CliffsDelta
)
{
    /// <summary>The row of an association.</summary>
    public static ValueCauseRow Of(ValueAssociation a, int rank) =>
        new(
            rank,
            a.Factor,
            a.Values,
            a.Levels,
            a.KruskalWallis.Statistic,
            a.KruskalWallis.P,
            a.AdjustedP,
            a.EpsilonSquared,
            a.Welch.IsKnown ? Comparison.Finite(a.Welch.Value.Statistic) : null,
            a.Welch.IsKnown ? a.Welch.Value.P : null,
            a.OmegaSquared,
            a.Furthest.Level,
            a.Furthest.Summary.Size,
            a.Furthest.Summary.Mean,
            a.Furthest.MeanOfOthers,
            a.Furthest.CliffsDelta
        );
}

/// <summary>
/// What the failures have in common, the strongest association first; and, for a measured characteristic, what its value depends on. Where
/// the data cannot carry an answer, <c>NotEnough</c> says why. The lines count the parts looked at, which are all unless there are very
/// many.
/// </summary>
public sealed record CauseAnswer(
    DateTimeOffset From,
    DateTimeOffset To,
    string? Model,
    string Stage,
    string? Characteristic,
    string? Code,
    int Parts,
    int Failed,
    int LookedAt,
    int LookedAtFailed,
    int Factors,
    int LevelsCompared,
    int LevelsTooSmall,
    string? NotEnough,
    IReadOnlyList<CauseRow> Items,
    string? Next,
    string? Unit,
    int LowerBoundsLeftOut,
    string? ValuesNotEnough,
    IReadOnlyList<ValueCauseRow> Values,
    string Computed
);

/// <summary>One part behind a number of the ranking.</summary>
public sealed record CausePart(string Serial, DateTimeOffset At, bool Failed, decimal? Value, string? Unit);
