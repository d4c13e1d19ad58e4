using System.Text.Json;
using Traceability.Domain.Quality;
using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.Intervals;
using Traceability.Domain.Quality.ManyTests;
using Traceability.Domain.Quality.Outliers;
using Traceability.Domain.Quality.Trends;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Statistics;

/// <summary>F7 (proportions), F8 (Fisher), F9 (Cochran-Mantel-Haenszel), F10 (many tests), F17 (others).</summary>
internal static class ComparisonCases
{
    public static IReadOnlyDictionary<string, Func<CheckValue, object>> All { get; } =
        CheckValue
            .All.Values.Where(v => v.Formula == "F7")
            .ToDictionary(v => v.Id, v => (Func<CheckValue, object>)Proportion)
            .Concat(
                new Dictionary<string, Func<CheckValue, object>>
                {
                    ["F8-003"] = value => FisherP(value),
                    ["F8-004"] = value => FisherP(value),
                    ["F8-005"] = value => FisherP(value),
                    ["F8-006"] = value => FisherP(value),
                    ["F8-007"] = value => FisherP(value),
                    ["F8-008"] = value =>
                        FisherExact.Test(Table(value.Inputs.GetProperty("table"))).Value is var r
                            ? new[] { r.OddsRatio, r.OddsRatioInterval.Lower, r.OddsRatioInterval.Upper }
                            : [],
                    ["F9-002"] = _ => Admissions().PCorrected,
                    ["F9-003"] = _ => Admissions().CommonOddsRatio,
                    ["F9-004"] = _ => Admissions().OddsRatioInterval is var i ? new[] { i.Lower, i.Upper } : [],
                    ["F9-005"] = _ => Admissions().ChiSquare,
                    ["F9-007"] = _ => Dataset.Read("UCBAdmissions").Column("Freq"),
                    ["F9-008"] = value => Benches(value).ChiSquareCorrected,
                    ["F9-009"] = value => Benches(value).ChiSquare,
                    ["F9-010"] = value => Benches(value) is var r ? new[] { r.PCorrected, r.P } : [],
                    ["F10-001"] = value => BenjaminiHochberg.Adjust(value.Numbers("p")).ToArray(),
                    ["F10-002"] = value =>
                        new double[]
                        {
                            BenjaminiHochberg.Adjust(value.Numbers("p")).Count(q => q <= 0.05),
                            Bonferroni.Adjust(value.Numbers("p")).Count(q => q <= 0.05),
                        },
                    ["F10-003"] = value => BenjaminiHochberg.Adjust(value.Numbers("p")).ToArray(),
                    ["F17-001"] = _ =>
                        WelchTTest.Test(Morley[0], Morley[4]).Value is var r ? new[] { r.Statistic, r.DegreesOfFreedom, r.P } : [],
                    ["F17-002"] = _ => KruskalWallis.Test(Morley).Value is var r ? new[] { r.Statistic, r.P } : [],
                    ["F17-003"] = _ => OneWayAnova.Test(Morley).Value.Test is var r ? new[] { r.Statistic, r.P } : [],
                    ["F17-004"] = value => ToleranceFactors.OneSided(value.Whole("n"), value.Number("p"), value.Number("conf")),
                    ["F17-005"] = value => ToleranceFactors.OneSided(value.Whole("n"), value.Number("p"), value.Number("conf")),
                    ["F17-006"] = value => ToleranceFactors.TwoSided(value.Whole("n"), value.Number("p"), value.Number("conf")),
                    ["F17-009"] = value => Grubbs.Critical(value.Whole("n"), 0.05),
                    ["F17-010"] = value => Grubbs.Test(value.Numbers("x")).Value.Statistic,
                    ["F17-011"] = value => MedianDeviation.Of(value.Numbers("x")).Value,
                    ["F17-013"] = _ =>
                        SpearmanCorrelation.Of(Dataset.Read("cars").Column("speed"), Dataset.Read("cars").Column("dist")).Value.Rho,
                }
            )
            .ToDictionary();

    public static double[][] Morley => Dataset.Morley.Groups("Speed", "Expt");

    public static CochranMantelHaenszelResult Admissions() =>
        CochranMantelHaenszel
            .Test([
                .. Dataset
                    .Read("UCBAdmissions")
                    .Column("Freq")
                    .Chunk(4)
                    .Select(c => new FailureTable((int)c[0], (int)c[1], (int)c[2], (int)c[3])),
            ])
            .Value;

    private static double[] Proportion(CheckValue value)
    {
        int k = value.Whole("k"),
            n = value.Whole("n");
        Interval interval = (
            value.Name.Split(' ')[0] switch
            {
                "Wilson" => WilsonInterval.Of(k, n),
                "Clopper-Pearson" => ClopperPearsonInterval.Of(k, n),
                "Jeffreys" => JeffreysInterval.Of(k, n),
                var unknown => throw new ArgumentException(unknown),
            }
        ).Value;
        return new[] { interval.Lower, interval.Upper };
    }

    private static double FisherP(CheckValue value) => FisherExact.Test(Table(value.Inputs.GetProperty("table"))).Value.P;

    private static FailureTable Table(JsonElement rows)
    {
        int[][] cells = [.. rows.EnumerateArray().Select(row => row.EnumerateArray().Select(c => c.GetInt32()).ToArray())];
        return new FailureTable(cells[0][0], cells[0][1], cells[1][0], cells[1][1]);
    }

    private static CochranMantelHaenszelResult Benches(CheckValue value) =>
        CochranMantelHaenszel.Test([.. value.Inputs.GetProperty("strata").EnumerateArray().Select(Table)]).Value;
}
