using Traceability.Domain.Quality.GaugeStudy;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Statistics;

/// <summary>F14 (gauge studies).</summary>
internal static class GaugeStudyCases
{
    public static IReadOnlyDictionary<string, Func<CheckValue, object>> All { get; } =
        new Dictionary<string, Func<CheckValue, object>>
        {
            ["F14-001"] = value =>
                CrossedGaugeStudy.Of(FromList(value.Numbers("y"))).Value is var s
                    ? new[] { s.Appraiser.SumOfSquares, s.Part.SumOfSquares, s.Interaction.SumOfSquares, s.Repeatability.SumOfSquares }
                    : [],
            ["F14-002"] = _ =>
                Study() is var s
                    ? new[] { s.Appraiser.MeanSquare, s.Part.MeanSquare, s.Interaction.MeanSquare, s.Repeatability.MeanSquare }
                    : [],
            ["F14-004"] = _ => FAgainst(Study().Repeatability),
            ["F14-007"] = _ => Study().PooledVariation.DistinctCategoriesUncut,
            ["F14-009"] = _ => FAgainst(Study().Pooled),
            ["F14-010"] = value => ByRanges(value) is var s ? new[] { s.MeanRange, s.AppraiserDifference, s.PartRange } : [],
            ["F14-011"] = value =>
                ByRanges(value).Variation is var v ? new[] { v.Repeatability, v.Reproducibility, v.Gauge, v.Part, v.Total } : [],
            ["F14-012"] = _ =>
                AverageRangeStudy.Of(Readings, Printed).Value.Variation is var v
                    ? new[] { v.GaugePercentOfTotal, v.DistinctCategoriesUncut }
                    : [],
        };

    public static GaugeReading[] Readings =>
        [
            .. Dataset
                .Grr.Column("y")
                .Zip(Dataset.Grr.Text("part"), Dataset.Grr.Text("op"))
                .Select(r => new GaugeReading(r.Second, r.Third, r.First)),
        ];

    private static AverageRangeFactors Printed => new(0.5908, 0.5231, 0.3146);

    private static CrossedGaugeStudy Study() => CrossedGaugeStudy.Of(Readings).Value;

    private static double[] FAgainst(VarianceSource error) =>
        [CrossedGaugeStudy.Against(Study().Appraiser, error).Statistic, CrossedGaugeStudy.Against(Study().Part, error).Statistic];

    private static AverageRangeStudy ByRanges(CheckValue value) =>
        AverageRangeStudy.Of(Readings, new AverageRangeFactors(value.Number("K1"), value.Number("K2"), value.Number("K3"))).Value;

    private static GaugeReading[] FromList(double[] y) =>
        [.. y.Select((value, i) => new GaugeReading($"part {i % 10}", $"appraiser {i / 30}", value))];
}
