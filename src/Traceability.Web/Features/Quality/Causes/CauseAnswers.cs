using Traceability.Domain.Quality.Causes;
using Traceability.Web.Features.Quality.Analyses;

namespace Traceability.Web.Features.Quality.Causes;

/// <summary>One level of one factor compared with the factor's other levels.</summary>
/// <param name="Rank" example="1">Its place in the ranking, from 1.</param>
/// <param name="Factor" example="builder at mount">What the parts are told apart by.</param>
/// <param name="Level" example="B2">The value of the factor that these parts have in common.</param>
/// <param name="Failed" example="9">Failed parts with it.</param>
/// <param name="Parts" example="40">Parts with it.</param>
/// <param name="FailedElsewhere" example="11">Failed parts with another level.</param>
/// <param name="PartsElsewhere" example="210">Parts with another level.</param>
/// <param name="Comparison">Its odds of failing against those of the other levels.</param>
/// <param name="AdjustedP" example="0.012">p, adjusted over all levels compared (Benjamini-Hochberg), 0 to 1.</param>
/// <param name="RaisesFailures" example="true">True when it fails more often than the others.</param>
/// <param name="StandsOut" example="true">True when it raises failures and adjusted p is at most 0.05.</param>
/// <param name="ExplainedByLeader" example="false">True when little is left of it once the first line is allowed for.</param>
/// <param name="CannotBeToldFrom">Levels of other factors that nearly the same parts have.</param>
/// <param name="GivenLeader">The comparison with the first line allowed for; null for the first line and where it was not made.</param>
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

/// <summary>How far one factor goes with the measured value, and its level that lies furthest out.</summary>
/// <param name="Rank" example="1">Its place in the ranking, from 1.</param>
/// <param name="Factor" example="film lot">What the parts are told apart by.</param>
/// <param name="Values" example="118">How many values.</param>
/// <param name="Levels" example="4">How many levels have values.</param>
/// <param name="KruskalWallis" example="17.9">The Kruskal-Wallis statistic, which ranks the factors.</param>
/// <param name="P" example="0.0005">Its p, 0 to 1.</param>
/// <param name="AdjustedP" example="0.004">The same, adjusted over all factors, 0 to 1.</param>
/// <param name="EpsilonSquared" example="0.15">Effect size of the ranks, 0 to 1.</param>
/// <param name="WelchF" example="6.4">Welch's F; null when a level has too few values.</param>
/// <param name="WelchP" example="0.0007">Its p, 0 to 1.</param>
/// <param name="OmegaSquared" example="0.12">Effect size of the means, up to 1.</param>
/// <param name="FurthestLevel" example="F-2603">The level furthest from the others.</param>
/// <param name="FurthestValues" example="21">How many values it has.</param>
/// <param name="FurthestMean" example="1139.4">Their mean, in the unit of the characteristic.</param>
/// <param name="MeanOfOthers" example="1157.8">The mean of all other values, in the same unit.</param>
/// <param name="CliffsDelta" example="-0.58">How far it lies from the others, -1 (all below) to 1 (all above).</param>
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
/// What the failures of a stage have in common, the strongest association first; and, for a measured characteristic, what its value depends
/// on.
/// </summary>
/// <param name="From" example="2025-11-30T00:00:00Z">Beginning of the period.</param>
/// <param name="To" example="2026-11-30T00:00:00Z">End of the period.</param>
/// <param name="Model" example="TARN-1">The model asked for; null for all.</param>
/// <param name="Stage" example="ring-resonance">The stage asked for.</param>
/// <param name="Characteristic" example="ringResonanceHz">The characteristic asked for; null for any failure.</param>
/// <param name="Code" example="stage-failed">The failure code asked for; null for any.</param>
/// <param name="Parts" example="250">Parts with a first verdict at the stage.</param>
/// <param name="Failed" example="20">Those of them that failed.</param>
/// <param name="LookedAt" example="250">Parts whose circumstances were looked up: all, unless there are very many.</param>
/// <param name="LookedAtFailed" example="20">Failed ones among them.</param>
/// <param name="Factors" example="14">Factors that tell the parts apart.</param>
/// <param name="LevelsCompared" example="37">Levels that were compared.</param>
/// <param name="LevelsTooSmall" example="5">Levels left out because fewer than 5 parts have them.</param>
/// <param name="NotEnough" example="not enough data: needs at least 1 parts, has 0">
/// Why there is no ranking; null when there is one.
/// </param>
/// <param name="Items">The levels, the strongest association first.</param>
/// <param name="Next" example="Mzc">Cursor of the next page; null at the end.</param>
/// <param name="Unit" example="Hz">The characteristic's unit; null when none was asked for.</param>
/// <param name="LowerBoundsLeftOut" example="0">Values left out because only a lower bound is known.</param>
/// <param name="ValuesNotEnough" example="not enough data: needs at least 1 parts, has 0">
/// Why there is no ranking of the values; null when there is one, or no characteristic was asked for.
/// </param>
/// <param name="Values">What the value depends on, the strongest first.</param>
/// <param name="Computed" example="Compared are parts that failed with parts that passed the same stage.">
/// How the figures are computed, in words.
/// </param>
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

/// <summary>One part behind a line of the ranking.</summary>
/// <param name="Serial" example="DS-0107">The part's serial.</param>
/// <param name="At" example="2026-10-02T09:14:00Z">When the attempt of its first verdict was begun.</param>
/// <param name="Failed" example="true">True when that verdict was no pass.</param>
/// <param name="Value" example="1131.5">The value measured; null when no characteristic was asked for, or none was read.</param>
/// <param name="Unit" example="Hz">The value's unit.</param>
public sealed record CausePart(string Serial, DateTimeOffset At, bool Failed, decimal? Value, string? Unit);
