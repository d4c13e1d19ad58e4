using Traceability.Domain.Stages.AcousticTest.Directions;
using Traceability.Domain.Tests.Sources;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Physics;

/// <summary>E8 and E9 (directional patterns).</summary>
internal static class PatternCases
{
    public static object? Compute(ExpectedValue v) =>
        v.Formula switch
        {
            "E8" => v.Name[(v.Name.LastIndexOf(' ') + 1)..] switch
            {
                "REE" => Pattern(v).RandomEnergyEfficiency,
                "DI" => Pattern(v).DirectivityIndexDb,
                "DF" => Pattern(v).DistanceFactor,
                "UDI" => Pattern(v).UnidirectionalIndexDb,
                "side90" => Pattern(v).SideDb,
                "back180" => Pattern(v).BackDb,
                "null" => Pattern(v).NullDegrees,
                "accept3" => Pattern(v).AcceptanceDegrees,
                _ => null,
            },
            "E9" => Directivity.IndexDb([
                .. Enumerable.Range(0, 180 / v.Whole("step_deg") + 1).Select(i => Point(v, i * v.Whole("step_deg"))),
            ]),
            _ => null,
        };

    private static FirstOrderPattern Pattern(ExpectedValue v) => new(v["A"]);

    private static PolarPoint Point(ExpectedValue v, int degrees) =>
        new(degrees, 20 * Math.Log10(Math.Max(v["floor_lin"], Math.Abs(v["A"] + (1 - v["A"]) * Math.Cos(degrees * Math.PI / 180)))));
}
