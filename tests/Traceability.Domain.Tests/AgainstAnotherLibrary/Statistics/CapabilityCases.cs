using Traceability.Domain.Quality.Capability;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Statistics;

/// <summary>F6 (capability) and F11 (normality).</summary>
internal static class CapabilityCases
{
    public static IReadOnlyDictionary<string, Func<CheckValue, object>> All { get; } =
        new Dictionary<string, Func<CheckValue, object>>
        {
            ["F6-002"] = value => Study(value).ShortTerm.Actual,
            ["F6-003"] = value => Study(value).Overall.Potential!.Value,
            ["F6-004"] = value => Study(value).Overall.Actual,
            ["F6-005"] = value =>
                CapabilityIntervals.OfPotential(value.Number("Cp"), value.Whole("n")) is var i ? new[] { i.Lower, i.Upper } : [],
            ["F6-007"] = value => CapabilityIntervals.ActualExceeds(value.Number("Cpk"), value.Whole("n")),
            ["F6-009"] = value =>
                CapabilityIndices.Of(value.Number("mean"), value.Number("s"), Limits(value)) is var c
                    ? new[] { c.Potential!.Value, c.Actual }
                    : [],
            ["F6-010"] = value => 1e6 * CapabilityIndices.ShareOutside(value.Number("mean"), value.Number("s"), Limits(value)),
            ["F11-001"] = _ => Normality("morley", "Speed").Statistic,
            ["F11-002"] = _ => Normality("morley", "Speed").P,
            ["F11-003"] = _ => Normality("precip", "precip").Statistic,
            ["F11-004"] = _ => Normality("precip", "precip").P,
            ["F11-005"] = _ => Normality("rivers", "rivers").Statistic,
            ["F11-006"] = _ => Normality("rivers", "rivers").P,
            ["F11-007"] = _ => Normality("faithful", "waiting").Statistic,
            ["F11-011"] = value => ShapiroWilk.Test(value.Numbers("x")).Value is var r ? new[] { r.W, r.P } : [],
        };

    private static CapabilityStudy Study(CheckValue value) => CapabilityStudy.Of(value.Numbers("x"), Limits(value)).Value;

    private static SpecificationLimits Limits(CheckValue value) => new(value.Number("LSL"), value.Number("USL"));

    private static AndersonDarlingResult Normality(string dataset, string column) =>
        AndersonDarling.Test(Dataset.Read(dataset).Column(column)).Value;
}
