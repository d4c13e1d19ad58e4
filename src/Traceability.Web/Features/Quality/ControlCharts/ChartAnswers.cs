using Traceability.Domain.Quality;
using Traceability.Domain.Quality.Capability;
using Traceability.Domain.Quality.Charts;
using Traceability.Web.Features.Quality.Analyses;

namespace Traceability.Web.Features.Quality.ControlCharts;

/// <summary>One value with what the chart says of it.</summary>
/// <param name="Number" example="37">Its place in the order of work, from 1.</param>
/// <param name="Serial" example="DS-0107">The part's serial.</param>
/// <param name="At" example="2026-10-02T09:14:00Z">When the attempt was begun.</param>
/// <param name="Attempt" example="1">Number of the attempt, from 1.</param>
/// <param name="Value" example="1156.2">The value as it counts now, in the chart's unit.</param>
/// <param name="Met" example="true">True when it met the limits that judged it.</param>
/// <param name="MovingRange" example="1.8">Distance to the value before; null for the first.</param>
/// <param name="Ewma" example="1157.1">Exponentially weighted average up to here.</param>
/// <param name="EwmaBeyond" example="false">True when that average is beyond its limits.</param>
/// <param name="Rules">Nelson's rules, 1 to 8, that this point completes.</param>
public sealed record ChartedPoint(
    int Number,
    string Serial,
    DateTimeOffset At,
    int Attempt,
    double Value,
    bool Met,
    double? MovingRange,
    double Ewma,
    bool EwmaBeyond,
    IReadOnlyList<int> Rules
);

/// <summary>Subgroups of equal size: means and ranges with limits. Of larger groups the first values are taken.</summary>
/// <param name="By" example="week">What makes a group: week or load.</param>
/// <param name="Size" example="4">Values in each group.</param>
/// <param name="GroupsLeftOut" example="2">Groups left out because they had fewer values.</param>
/// <param name="NotEnough" example="not enough data: needs at least 1 parts, has 0">Why there are none; null when there are.</param>
/// <param name="Names">What each group is called, such as 2026-W40.</param>
/// <param name="FirstSerials">The first part of each group.</param>
/// <param name="Means">The mean of each group, in the chart's unit.</param>
/// <param name="Ranges">The range of each group, in the chart's unit.</param>
/// <param name="MeanLimits">Limits of the means.</param>
/// <param name="RangeLimits">Limits of the ranges.</param>
/// <param name="MeansBeyond">Which means are beyond their limits, counted from 0.</param>
/// <param name="RangesBeyond">Which ranges are beyond their limits, counted from 0.</param>
public sealed record Subgroups(
    string By,
    int Size,
    int GroupsLeftOut,
    string? NotEnough,
    IReadOnlyList<string> Names,
    IReadOnlyList<string> FirstSerials,
    IReadOnlyList<double> Means,
    IReadOnlyList<double> Ranges,
    ChartLimits? MeanLimits,
    ChartLimits? RangeLimits,
    IReadOnlyList<int> MeansBeyond,
    IReadOnlyList<int> RangesBeyond
);

/// <summary>How well the values fit between the limits, with intervals; or, in words, why that cannot be said.</summary>
/// <param name="Lower" example="1128">Lower limit; null without one.</param>
/// <param name="Upper" example="1188">Upper limit; null without one.</param>
/// <param name="Values" example="120">How many values it stands on.</param>
/// <param name="Cp" example="1.41">Potential capability by the short-term spread; null with one limit only.</param>
/// <param name="Cpk" example="1.22">Capability by the short-term spread.</param>
/// <param name="Pp" example="1.33">Potential capability by the overall spread; null with one limit only.</param>
/// <param name="PpLower" example="1.16">Lower end of its 95 % interval.</param>
/// <param name="PpUpper" example="1.5">Upper end of its 95 % interval.</param>
/// <param name="Ppk" example="1.15">Capability by the overall spread.</param>
/// <param name="PpkLower" example="0.99">Lower end of its 95 % interval.</param>
/// <param name="PpkUpper" example="1.31">Upper end of its 95 % interval; null when infinite.</param>
/// <param name="NormalityP" example="0.34">p of the Anderson-Darling test for a normal distribution; null with too few values.</param>
/// <param name="MayBeQuoted" example="true">False while an objection stands.</param>
/// <param name="Objections">What speaks against quoting the figures.</param>
/// <param name="NotEnough" example="not enough data: needs at least 1 parts, has 0">Why there are no figures; null when there are.</param>
public sealed record CapabilityAnswer(
    decimal? Lower,
    decimal? Upper,
    int Values,
    double? Cp,
    double? Cpk,
    double? Pp,
    double? PpLower,
    double? PpUpper,
    double? Ppk,
    double? PpkLower,
    double? PpkUpper,
    double? NormalityP,
    bool MayBeQuoted,
    IReadOnlyList<CapabilityObjection> Objections,
    string? NotEnough
)
{
    /// <summary>No capability, for a reason.</summary>
    public static CapabilityAnswer None(decimal? lower, decimal? upper, string reason) =>
        new(lower, upper, 0, null, null, null, null, null, null, null, null, null, false, [], reason);

    /// <summary>A study's figures, or why there are none.</summary>
    public static CapabilityAnswer Of(decimal? lower, decimal? upper, Computed<CapabilityStudy> answer) =>
        answer.Match(
            s => new CapabilityAnswer(
                lower,
                upper,
                s.Values,
                s.ShortTerm.Potential,
                s.ShortTerm.Actual,
                s.Overall.Potential,
                s.PotentialInterval?.Lower,
                s.PotentialInterval?.Upper,
                s.Overall.Actual,
                Comparison.Finite(s.ActualInterval.Lower),
                Comparison.Finite(s.ActualInterval.Upper),
                s.Normality.IsKnown ? s.Normality.Value.P : null,
                s.MayBeQuoted,
                s.Objections,
                null
            ),
            missing => None(lower, upper, missing.ToString())
        );
}

/// <summary>The values of the parts of one lot, or of those without one.</summary>
/// <param name="Lot" example="F-2603">The lot's number; an en dash for parts without one, several numbers joined by " + ".</param>
/// <param name="Values" example="21">How many values.</param>
/// <param name="Mean" example="1149.3">Their mean, in the chart's unit.</param>
/// <param name="Lowest" example="1131.5">The lowest.</param>
/// <param name="Highest" example="1163">The highest.</param>
/// <param name="Deviation" example="7.9">Their standard deviation; null for one value.</param>
public sealed record LotOfValues(string Lot, int Values, double Mean, double Lowest, double Highest, double? Deviation);

/// <summary>A model that the chart leaves out.</summary>
/// <param name="Model" example="TARN-2">The model.</param>
/// <param name="Values" example="18">How many values of it there are.</param>
public sealed record ModelLeftOut(string Model, int Values);

/// <summary>A control chart, with how it was computed and on how many values.</summary>
/// <param name="From" example="2025-11-30T00:00:00Z">Beginning of the period.</param>
/// <param name="To" example="2026-11-30T00:00:00Z">End of the period.</param>
/// <param name="Model" example="TARN-1">The model drawn.</param>
/// <param name="Stage" example="ring-resonance">The stage, by its code.</param>
/// <param name="Characteristic" example="ringResonanceHz">The characteristic.</param>
/// <param name="Unit" example="Hz">Its unit; null without values.</param>
/// <param name="Values" example="120">How many values the chart stands on.</param>
/// <param name="LowerBoundsLeftOut" example="0">Values left out because only a lower bound is known.</param>
/// <param name="NotEnough" example="not enough data: needs at least 1 parts, has 0">Why there are no limits; null when there are.</param>
/// <param name="Limits">Limits of the individual values.</param>
/// <param name="Sigma" example="6.1">Short-term standard deviation, from the mean moving range.</param>
/// <param name="RangeLimits">Limits of the moving ranges.</param>
/// <param name="EwmaLimits">Limits that the weighted average comes to in the long run.</param>
/// <param name="EwmaWeight" example="0.2">Weight of the newest value, 0 to 1.</param>
/// <param name="RuleBreaks">How often each of Nelson's rules, 1 to 8, is broken.</param>
/// <param name="PointsMarked" example="3">Points that complete a rule or do not meet their limits.</param>
/// <param name="Thinned" example="every 4th of 8000 points, and all marked ones">Which points are left out; null when none is.</param>
/// <param name="Points">The points, in the order of work.</param>
/// <param name="Subgroups">The values in subgroups.</param>
/// <param name="Capability">How well they fit their limits.</param>
/// <param name="LotKind" example="film">The kind of lot that they are told apart by; null when none was asked for.</param>
/// <param name="ByLot">The values of each lot, when that was asked for.</param>
/// <param name="Computed" example="Limits stand three standard deviations from the mean; sigma comes from the moving range.">
/// How the figures are computed, in words.
/// </param>
public sealed record ControlChartAnswer(
    DateTimeOffset From,
    DateTimeOffset To,
    string? Model,
    string Stage,
    string Characteristic,
    string? Unit,
    int Values,
    int LowerBoundsLeftOut,
    string? NotEnough,
    ChartLimits? Limits,
    double? Sigma,
    ChartLimits? RangeLimits,
    ChartLimits? EwmaLimits,
    double EwmaWeight,
    IReadOnlyDictionary<int, int> RuleBreaks,
    int PointsMarked,
    string? Thinned,
    IReadOnlyList<ChartedPoint> Points,
    Subgroups Subgroups,
    CapabilityAnswer Capability,
    string? LotKind,
    IReadOnlyList<LotOfValues> ByLot,
    string Computed
)
{
    /// <summary>How many values of other models there are, when none was asked for.</summary>
    public IReadOnlyList<ModelLeftOut> ModelsLeftOut { get; init; } = [];
}
