using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.Summaries;
using Traceability.Domain.Quality.Trends;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Statistics;

/// <summary>F0 (NIST Statistical Reference Datasets).</summary>
internal static class SelfTestCases
{
    private static readonly double[] Michelso = [.. Dataset.Morley.Column("Speed").Select(v => (299_000 + v) / 1000)];

    public static IReadOnlyDictionary<string, Func<CheckValue, object>> All { get; } =
        new Dictionary<string, Func<CheckValue, object>>
        {
            ["F0-001"] = _ => Sample.Mean(Michelso),
            ["F0-002"] = _ => Sample.StandardDeviation(Michelso),
            ["F0-003"] = _ => Autocorrelation.LagOne(Michelso).Value,
            ["F0-004"] = value => OneWayAnova.Test([.. value.Numbers("y").Chunk(5)]).Value.Test.Statistic,
            ["F0-005"] = _ => OneWayAnova.Test(Dataset.Read("strd_SiRstv").Groups("y", "g")).Value.SumOfSquaresBetween,
            ["F0-008"] = _ => Longley().Coefficients is [var b0, .., var b6] ? new[] { b0, b6 } : [],
        };

    /// <summary>The original units of the NIST data: R rescaled them.</summary>
    public static LinearRegressionResult Longley()
    {
        Dataset r = Dataset.Read("longley");
        double[] Scaled(string column, double factor) => [.. r.Column(column).Select(v => Math.Round(v * factor, 6))];
        return LinearRegression
            .Fit(
                [
                    Scaled("GNP.deflator", 1),
                    Scaled("GNP", 1000),
                    Scaled("Unemployed", 10),
                    Scaled("Armed.Forces", 10),
                    Scaled("Population", 1000),
                    Scaled("Year", 1),
                ],
                Scaled("Employed", 1000)
            )
            .Value;
    }
}
