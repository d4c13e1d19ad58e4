using System.Text.Json;
using Traceability.Domain.Quality.Pairing;
using Traceability.Domain.Tests.Sources;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Physics;

/// <summary>F16 (pairing).</summary>
internal static class PairingCases
{
    public static object? Compute(ExpectedValue v) =>
        (v.Formula, v.Name) switch
        {
            ("F16", var name) when name.StartsWith("optimal pairs", StringComparison.Ordinal) => BestPairing
                .Of(Costs(v))
                .Pairs.Select(pair => new[] { pair.First, pair.Second })
                .ToArray(),
            ("F16", var name) when name.StartsWith("greedy cost", StringComparison.Ordinal) => GreedyPairing.Of(Costs(v)).Cost,
            ("F16", _) => BestPairing.Of(Costs(v)).Cost,
            _ => null,
        };

    private static PairingCosts Costs(ExpectedValue v)
    {
        if (v.Inputs.TryGetProperty("matrix", out _))
            return PairingCosts.Of(v.Rows("matrix").Length, (a, b) => v.Rows("matrix")[a][b]);
        if (v.Inputs.TryGetProperty("points", out _))
            return PairingCosts.ByDistance(v.Rows("points"), [1, 1]);
        if (v.Inputs.TryGetProperty("L_dB", out _))
            return PairingCosts.ByDistance([.. v.Numbers("f_Hz").Zip(v.Numbers("L_dB"), (f, level) => new[] { f, level })], [20, 0.4]);
        JsonElement line = v.Inputs.TryGetProperty("x", out var x) ? x : v.Inputs.GetProperty("f_Hz");
        return PairingCosts.ByDistance([.. line.EnumerateArray().Select(e => new[] { e.GetDouble() })], [1]);
    }
}
