using Traceability.Domain.Gates;
using Traceability.Domain.Routes;

namespace Traceability.Domain.Quality.Pairing;

/// <summary>How well two parts go together by the match rule of a route.</summary>
/// <param name="Difference">Difference in the rule's characteristic, in its own unit.</param>
/// <param name="Further">Differences in the rule's further characteristics, in their order; null where one of the parts has no
/// value.</param>
/// <param name="SameFilmLot">True when both are of one film lot; null when neither tells.</param>
/// <param name="Cost">Root of the sum of squares of the differences, each over the difference allowed; 1 is as unlike as one of them may
/// be.</param>
/// <param name="Within">True when the rule lets them go together.</param>
/// <remarks>A scaled distance; no source needed. Checks: <c>MateFitTests</c>.</remarks>
public sealed record MateFit(decimal Difference, IReadOnlyList<decimal?> Further, bool? SameFilmLot, double Cost, bool Within)
{
    /// <summary>The fit of two parts; null when one of them has no value of the rule's characteristic.</summary>
    public static MateFit? Of(MatchRule rule, PartInput a, PartInput b)
    {
        if (DifferenceIn(rule.Characteristic, a, b) is not { } difference)
        {
            return null;
        }

        var further = rule.Further.Select(f => DifferenceIn(f.Characteristic, a, b)).ToList();
        var limits = rule.Further.Select(f => f.MaximumDifference).Prepend(rule.MaximumDifference);
        var shares = further.Prepend(difference).Zip(limits, (d, most) => d is { } known ? Share(known, most) : 0).ToList();
        var sameLot = a.FilmLotId is null && b.FilmLotId is null ? (bool?)null : a.FilmLotId == b.FilmLotId;
        return new(
            difference,
            further,
            sameLot,
            Math.Sqrt(shares.Sum(s => s * s)),
            shares.All(s => s <= 1) && (!rule.SameFilmLot || sameLot is not false)
        );
    }

    private static decimal? DifferenceIn(string characteristic, PartInput a, PartInput b) =>
        a.Values.TryGetValue(characteristic, out var x) && b.Values.TryGetValue(characteristic, out var y) ? Math.Abs(x - y) : null;

    private static double Share(decimal difference, decimal most) =>
        difference == 0 ? 0
        : most > 0 ? (double)(difference / most)
        : double.PositiveInfinity;
}
