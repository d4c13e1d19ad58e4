using System.Text.Json;
using Traceability.Domain.Tests.Sources;
using Traceability.Domain.Values.Limits;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Physics;

/// <summary>F18 (decisions with uncertainty).</summary>
internal static class DecisionCases
{
    public static object? Compute(ExpectedValue v) =>
        (v.Formula, v.Name) switch
        {
            ("F18", var name) when name.StartsWith("verdict with guard band", StringComparison.Ordinal) => DecisionRule
                .Guarded.Decide(v["y"], v["u"], Limits(v))
                .Verdict switch
            {
                DecisionVerdict.Accept => "accept",
                DecisionVerdict.Conditional => "conditional",
                _ => "reject",
            },
            ("F18", var name) when name.StartsWith("one-sided lower limit", StringComparison.Ordinal) => ConformanceProbability.Of(
                v["y"],
                v["u_rel"] * v["y"],
                Limits(v)
            ),
            ("F18", _) => ConformanceProbability.Of(v["y"], v["u"], Limits(v)),
            _ => null,
        };

    private static ToleranceInterval Limits(ExpectedValue v) => new(Limit(v, "L"), Limit(v, "U"));

    private static double? Limit(ExpectedValue v, string name) =>
        v.Inputs.TryGetProperty(name, out JsonElement limit) ? limit.GetDouble() : null;
}
