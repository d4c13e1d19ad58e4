using System.Text.Json;
using Traceability.Domain.Quality.Charts;
using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Statistics;

/// <summary>F1 (constants), F2 (individuals), F3 (subgroups), F4 (EWMA), F5 (Nelson's rules).</summary>
internal static class ChartCases
{
    /// <summary>The handbook's limits of F2 were computed with d2 rounded to three decimals.</summary>
    private const double PrintedMeanRange = 1.128;

    public static IReadOnlyDictionary<string, Func<CheckValue, object>> All { get; } =
        CheckValue
            .All.Values.Where(v => v.Formula == "F1")
            .ToDictionary(v => v.Id, v => (Func<CheckValue, object>)(value => Constant(value)))
            .Concat(CheckValue.All.Values.Where(v => v.Formula == "F5").ToDictionary(v => v.Id, v => (Func<CheckValue, object>)Nelson))
            .Concat(
                new Dictionary<string, Func<CheckValue, object>>
                {
                    ["F2-001"] = value => Individuals(value).Individuals.Centre,
                    ["F2-002"] = value => Individuals(value).Ranges.Centre,
                    ["F2-003"] = value => Individuals(value, PrintedMeanRange).Individuals.Upper,
                    ["F2-004"] = value => Individuals(value, PrintedMeanRange).Individuals.Lower,
                    ["F2-008"] = value => Sample.StandardDeviation(value.Numbers("x")),
                    ["F2-009"] = value => Individuals(value).SigmaByMedian,
                    ["F3-001"] = _ => Subgroups.MeansByRange.Centre,
                    ["F3-002"] = _ => Subgroups.RangeLimits.Centre,
                    ["F3-003"] = _ => Subgroups.MeansByRange.Upper,
                    ["F3-005"] = _ => Subgroups.RangeLimits.Upper,
                    ["F3-006"] = _ => Subgroups.SigmaByRange,
                    ["F3-009"] = _ => Subgroups.MeansBeyondLimits.Select(i => i + 1.0).ToArray(),
                    ["F4-001"] = value => Ewma(value).Averages.ToArray(),
                    ["F4-002"] = value => Ewma(value).FinalLimits.Upper,
                    ["F4-003"] = value => Ewma(value).FinalLimits.Lower,
                }
            )
            .ToDictionary();

    private static SubgroupChart Subgroups => SubgroupChart.Of(SubgroupChart.Consecutive(Dataset.Morley.Column("Speed"), 5)).Value;

    private static IndividualsChart Individuals(CheckValue value, double? meanRangeConstant = null) =>
        IndividualsChart.Of(value.Numbers("x"), meanRangeConstant).Value;

    private static EwmaChart Ewma(CheckValue value) =>
        EwmaChart.Of(value.Numbers("x"), value.Number("z0"), value.Number("s"), value.Number("lambda"), value.Number("L"));

    private static double Constant(CheckValue value)
    {
        ControlChartConstants constants = ControlChartConstants.For(value.Whole("n"));
        return value.Name.Split(' ')[^1] switch
        {
            "d2" => constants.MeanRange,
            "d3" => constants.RangeDeviation,
            "c4" => constants.MeanDeviation,
            "A2" => constants.MeansByRange,
            "A3" => constants.MeansByDeviation,
            "D3" => constants.RangeLower,
            "D4" => constants.RangeUpper,
            "B3" => constants.DeviationLower,
            "B4" => constants.DeviationUpper,
            "E2" => constants.IndividualsByRange,
            var unknown => throw new ArgumentException(unknown),
        };
    }

    private static string Nelson(CheckValue value) =>
        JsonSerializer.Serialize(
            NelsonRules
                .Check(value.Numbers("z"))
                .GroupBy(b => b.Rule)
                .OrderBy(g => g.Key)
                .ToDictionary(g => ((int)g.Key).ToString(System.Globalization.CultureInfo.InvariantCulture), g => g.Select(b => b.Index))
        );
}
