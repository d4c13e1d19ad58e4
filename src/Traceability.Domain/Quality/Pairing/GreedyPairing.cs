namespace Traceability.Domain.Quality.Pairing;

/// <summary>Pairing by taking the two best that are left, again and again: what a hand does, to compare the best pairing with.</summary>
public static class GreedyPairing
{
    /// <summary>Pairs the parts. Equal costs are taken in the order of the parts.</summary>
    /// <param name="costs">The costs.</param>
    public static PartPairing Of(PairingCosts costs)
    {
        ArgumentNullException.ThrowIfNull(costs);
        var byCost =
            from a in Enumerable.Range(0, costs.Count)
            from b in Enumerable.Range(a + 1, costs.Count - a - 1)
            where double.IsFinite(costs[a, b])
            orderby costs[a, b], a, b
            select (a, b);
        var mates = Enumerable.Repeat(-1, costs.Count).ToArray();
        foreach (var (a, b) in byCost)
            if (mates[a] < 0 && mates[b] < 0)
                (mates[a], mates[b]) = (b, a);
        return PartPairing.FromMates(mates, costs);
    }
}
