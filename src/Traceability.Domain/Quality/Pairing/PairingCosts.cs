using Traceability.Domain.Values;

namespace Traceability.Domain.Quality.Pairing;

/// <summary>How badly two parts go together, for every two of a number of parts.</summary>
/// <remarks>
/// Symmetrical, not negative; positive infinity forbids a pair (other film lot, other model). Checks: <c>PairingTests</c>.
/// </remarks>
public sealed class PairingCosts
{
    private readonly double[] _costs;

    private PairingCosts(int count, double[] costs) => (Count, _costs) = (count, costs);

    /// <summary>Number of parts.</summary>
    public int Count { get; }

    /// <summary>Cost of a pair; positive infinity when it is forbidden.</summary>
    /// <param name="a">Number of one part, from 0.</param>
    /// <param name="b">Number of the other.</param>
    public double this[int a, int b] => _costs[a * Count + b];

    /// <summary>Costs by a function of two part numbers.</summary>
    /// <param name="count">Number of parts; not negative.</param>
    /// <param name="cost">Cost of two different parts, called once for each two with the smaller number first; not negative, infinity
    /// forbids.</param>
    /// <exception cref="ArgumentOutOfRangeException">A negative count, a negative cost, or NaN.</exception>
    public static PairingCosts Of(int count, Func<int, int, double> cost)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        ArgumentNullException.ThrowIfNull(cost);
        var costs = new double[count * count];
        for (var a = 0; a < count; a++)
        {
            costs[a * count + a] = double.PositiveInfinity;
            for (var b = a + 1; b < count; b++)
            {
                var value = cost(a, b);
                if (!(value >= 0))
                    throw new ArgumentOutOfRangeException(nameof(cost), value, $"the cost of parts {a} and {b} must not be negative");
                costs[a * count + b] = costs[b * count + a] = value;
            }
        }
        return new(count, costs);
    }

    /// <summary>
    /// Costs by distance: root of the sum of squares of the differences, each over the difference that counts as one.
    /// </summary>
    /// <param name="parts">The characteristics of each part, in one order; all of one length.</param>
    /// <param name="scales">For each characteristic the difference that counts as one (20 Hz, 0.4 dB); greater than zero.</param>
    /// <param name="mayPair">Whether two parts may be paired at all; null when any may.</param>
    /// <exception cref="ArgumentException">A part with another number of characteristics.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A scale that is not positive, a characteristic that is not finite.</exception>
    public static PairingCosts ByDistance(
        IReadOnlyList<IReadOnlyList<double>> parts,
        IReadOnlyList<double> scales,
        Func<int, int, bool>? mayPair = null
    )
    {
        ArgumentNullException.ThrowIfNull(parts);
        ArgumentNullException.ThrowIfNull(scales);
        if (parts.Any(part => part.Count != scales.Count))
            throw new ArgumentException($"every part needs {scales.Count} characteristics", nameof(parts));
        return Of(
            parts.Count,
            (a, b) =>
            {
                if (mayPair is not null && !mayPair(a, b))
                    return double.PositiveInfinity;
                var sum = 0.0;
                for (var i = 0; i < scales.Count; i++)
                {
                    var difference = Require.Finite(parts[a][i], nameof(parts)) - Require.Finite(parts[b][i], nameof(parts));
                    sum += Math.Pow(difference / Require.Positive(scales[i], nameof(scales)), 2);
                }
                return Math.Sqrt(sum);
            }
        );
    }
}
