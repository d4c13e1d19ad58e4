namespace Traceability.Domain.Quality.Pairing;

/// <summary>The best mates for the part in hand.</summary>
public static class BestMates
{
    /// <summary>The allowed mates of a part, best first; equal ones in their order.</summary>
    /// <param name="costs">The costs.</param>
    /// <param name="part">Number of the part, from 0.</param>
    /// <param name="atMost">How many are wanted; not negative.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such part, or a negative number.</exception>
    public static IReadOnlyList<PartPair> For(PairingCosts costs, int part, int atMost = 5)
    {
        ArgumentNullException.ThrowIfNull(costs);
        ArgumentOutOfRangeException.ThrowIfNegative(part);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(part, costs.Count);
        ArgumentOutOfRangeException.ThrowIfNegative(atMost);
        return
        [
            .. Enumerable
                .Range(0, costs.Count)
                .Where(mate => double.IsFinite(costs[part, mate]))
                .OrderBy(mate => costs[part, mate])
                .Take(atMost)
                .Select(mate => new PartPair(part, mate, costs[part, mate])),
        ];
    }
}
