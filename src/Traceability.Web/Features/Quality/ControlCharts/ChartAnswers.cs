using Traceability.Domain.Quality;
using Traceability.Domain.Quality.Capability;
using Traceability.Domain.Quality.Charts;
using Traceability.Web.Features.Quality.Analyses;

namespace Traceability.Web.Features.Quality.ControlCharts;

/// <summary>
/// One value with what the chart says of it: its moving range, the weighted average with its limits, and Nelson's rules that it completes.
/// </summary>
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

/// <summary>
/// Subgroups of equal size: means and ranges with limits. <c>GroupsLeftOut</c> had fewer values; of larger groups the first values are
/// taken.
/// </summary>
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

/// <summary>Capability with its intervals; <c>MayBeQuoted</c> is false while an objection stands.</summary>
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

/// <summary>The values of the parts of one lot (or of parts without one).</summary>
public sealed record LotOfValues(string Lot, int Values, double Mean, double Lowest, double Highest, double? Deviation);

/// <summary>A model that the chart leaves out, with how many values of it there are.</summary>
public sealed record ModelLeftOut(string Model, int Values);

/// <summary>
/// A control chart, with how it was computed and on how many values. <c>Thinned</c> says which points are left out of <c>Points</c>, if
/// any.
/// </summary>
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
