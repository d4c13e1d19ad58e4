namespace Traceability.Domain.Quality.Pairing;

/// <summary>
/// The best pairing of all parts at once: as many pairs as possible, and among those the least sum of costs.
/// </summary>
/// <remarks>
/// <para>
/// Exact: minimum-weight matching in a general graph by Edmonds' blossoms, O(n^3); two hundred parts take some tens of milliseconds.
/// Taking the nearest two first, again and again, can be much worse, see <see cref="GreedyPairing"/>.
/// </para>
/// <para>
/// With an odd number of parts the one is left out whose absence makes the rest cheapest. Where forbidden pairs leave no mate for some
/// parts, the number of pairs comes first and their cost second. Equal optima are decided by the order of the parts, so the same input
/// gives the same pairs. Costs are rounded to 10^-11 of the greatest one, so that the search runs in whole numbers and cannot stall on
/// rounding.
/// </para>
/// <para>
/// Source: Edmonds, Canad. J. Math. 17 (1965) 449; Galil, ACM Computing Surveys 18 (1986) 23, from memory. Checks: published values F16,
/// <c>PairingTests</c> (against a search through all pairings).
/// </para>
/// </remarks>
public static class BestPairing
{
    private const double Steps = 1e11;

    /// <summary>Pairs the parts.</summary>
    /// <param name="costs">The costs; at most 1000 parts.</param>
    /// <exception cref="ArgumentOutOfRangeException">More than 1000 parts.</exception>
    public static PartPairing Of(PairingCosts costs)
    {
        ArgumentNullException.ThrowIfNull(costs);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(costs.Count, 1000, nameof(costs));
        var greatest = 0.0;
        for (var a = 0; a < costs.Count; a++)
        for (var b = a + 1; b < costs.Count; b++)
            if (double.IsFinite(costs[a, b]))
                greatest = Math.Max(greatest, costs[a, b]);
        var scale = greatest > 0 ? Steps / greatest : 0;

        // One pair more outweighs whatever all pairs together can cost.
        var perPair = (long)Steps * (costs.Count / 2 + 1);
        var matching = new BlossomMatching(
            costs.Count,
            (a, b) => double.IsFinite(costs[a, b]) ? perPair - (long)Math.Round(costs[a, b] * scale) : 0
        );
        return PartPairing.FromMates(matching.Mates(), costs);
    }
}
