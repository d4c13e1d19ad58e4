using System.Globalization;
using Traceability.Domain.Quality.Returns;
using Traceability.Domain.Quality.Yields;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Statistics;

/// <summary>F12 (yields) and F15 (field returns).</summary>
internal static class YieldAndReturnCases
{
    public static IReadOnlyDictionary<string, Func<CheckValue, object>> All { get; } =
        new Dictionary<string, Func<CheckValue, object>>
        {
            ["F12-001"] = value => RolledThroughputYield.Product(value.Numbers("fpy")),
            ["F12-003"] = value => RolledThroughputYield.DefectsPerUnitOf(RolledThroughputYield.Product(value.Numbers("fpy"))),
            ["F12-004"] = _ => FirstPassYield.Of(46, 50).Value.Value,
            ["F15-002"] = _ => Maintained().Steps.Select(s => s.Survival).ToArray(),
            ["F15-003"] = _ => Maintained().Steps.Select(s => s.StandardError!.Value).ToArray(),
            ["F15-005"] = _ => LogRank.Test([Aml("Maintained"), Aml("Nonmaintained")]).Value is var r ? new[] { r.Statistic, r.P } : [],
            ["F15-006"] = _ =>
                string.Join(
                    ' ',
                    Dataset
                        .Aml.Text("time")
                        .Zip(Dataset.Aml.Text("status"), Dataset.Aml.Text("x"))
                        .Select(row => $"{row.First}/{row.Second}/{row.Third}")
                ),
            ["F15-008"] = value => Handbook(value).LogLikelihood,
            ["F15-009"] = value =>
                new[]
                {
                    WeibullFit.ReliabilityOf(value.Number("shape"), value.Number("scale"), 100),
                    WeibullFit.TimeUntilFailedOf(value.Number("shape"), value.Number("scale"), 0.10),
                },
            ["F15-010"] = _ => WeibullFit.Of(Lung()).Value is var fit ? new[] { fit.Shape, fit.Scale } : [],
            ["F15-011"] = value =>
                ExponentialLife.Of(value.Whole("r"), value.Number("T"), confidence: 0.90).Value.Interval is var i
                    ? new[] { i.Lower, i.Upper }
                    : [],
        };

    public static Lifetime[] Aml(string group) =>
        [
            .. Dataset
                .Aml.Column("time")
                .Zip(Dataset.Aml.Text("status"), Dataset.Aml.Text("x"))
                .Where(row => row.Third == group)
                .Select(row => new Lifetime(row.First, row.Second == "1")),
        ];

    public static Lifetime[] Lung()
    {
        Dataset lung = Dataset.Read("lung_time_status");
        return [.. lung.Column("time").Zip(lung.Text("status"), (time, status) => new Lifetime(time, status == "2"))];
    }

    private static KaplanMeier Maintained() => KaplanMeier.Of(Aml("Maintained")).Value;

    private static WeibullFit Handbook(CheckValue value)
    {
        string[] censored = value.Inputs.GetProperty("censored").GetString()!.Split(" at ");
        return WeibullFit
            .Of([
                .. value.Numbers("fail").Select(t => new Lifetime(t, true)),
                .. Enumerable.Repeat(
                    new Lifetime(double.Parse(censored[1], CultureInfo.InvariantCulture), false),
                    int.Parse(censored[0], CultureInfo.InvariantCulture)
                ),
            ])
            .Value;
    }
}
