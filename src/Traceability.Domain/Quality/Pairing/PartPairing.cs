namespace Traceability.Domain.Quality.Pairing;

/// <summary>Two parts that go together.</summary>
/// <param name="First">Number of one part, the smaller.</param>
/// <param name="Second">Number of the other.</param>
/// <param name="Cost">How badly they match.</param>
public readonly record struct PartPair(int First, int Second, double Cost);

/// <summary>A pairing of parts.</summary>
/// <param name="Pairs">The pairs, in order of their first part.</param>
/// <param name="LeftOut">Parts without a mate, in order.</param>
public sealed record PartPairing(IReadOnlyList<PartPair> Pairs, IReadOnlyList<int> LeftOut)
{
    /// <summary>Sum of the costs of the pairs.</summary>
    public double Cost => Pairs.Sum(pair => pair.Cost);

    internal static PartPairing FromMates(IReadOnlyList<int> mates, PairingCosts costs) =>
        new(
            [
                .. from part in Enumerable.Range(0, costs.Count)
                where mates[part] > part
                select new PartPair(part, mates[part], costs[part, mates[part]]),
            ],
            [.. Enumerable.Range(0, costs.Count).Where(part => mates[part] < 0)]
        );
}
