using Traceability.Domain.Gates;
using Traceability.Domain.Quality.Pairing;
using Traceability.Domain.Routes;

namespace Traceability.Web.Features.Station.Mates;

/// <summary>Ranks free parts by how well they match, and pairs them.</summary>
internal static class MateRanking
{
    /// <summary>The free parts, the ones within the limits and closest to <paramref name="others"/> first.</summary>
    public static List<Mate> Rank(
        IEnumerable<MateCandidate> free,
        List<MateCandidate> others,
        MatchRule match,
        IReadOnlyDictionary<Guid, string> lots
    ) =>
        [
            .. from part in free
            let fits = others.Select(o => MateFit.Of(match, part.Part, o.Part)!).ToList()
            let worst = fits.MaxBy(f => f.Cost)
            let within = fits.Count == 0 ? (bool?)null : fits.TrueForAll(f => f.Within)
            orderby within is false, worst?.Cost, part.Part.Values[match.Characteristic], part.Part.Serial
            select new Mate(
                part.Part.Serial,
                part.Part.Values[match.Characteristic],
                fits.Count == 0 ? null : fits.Max(f => f.Difference),
                within,
                [.. match.Further.Select((f, i) => FurtherOf(part, f, fits, i)).OfType<FurtherValue>()],
                FilmLotOf(part.Part, lots),
                SameLot(fits),
                Finite(worst?.Cost)
            ),
        ];

    private static FurtherValue? FurtherOf(MateCandidate part, MatchLimit limit, List<MateFit> fits, int i) =>
        part.Part.Values.TryGetValue(limit.Characteristic, out var value)
            ? new(
                limit.Characteristic,
                part.Units.GetValueOrDefault(limit.Characteristic, ""),
                value,
                fits.Max(f => f.Further[i]),
                limit.MaximumDifference
            )
            : null;

    private static bool? SameLot(List<MateFit> fits) =>
        fits.TrueForAll(f => f.SameFilmLot is null) ? null : fits.TrueForAll(f => f.SameFilmLot is not false);

    /// <summary>JSON has no infinity: parts that may not differ at all and do are only not within.</summary>
    private static double? Finite(double? cost) => cost is { } c && double.IsFinite(c) ? Math.Round(c, 4) : null;

    /// <summary>As many pairs within the limits as can be, and among those the closest.</summary>
    public static List<MatePair> PairUp(List<MateCandidate> free, MatchRule match)
    {
        var fits = new Dictionary<(int, int), MateFit>();
        var costs = PairingCosts.Of(
            free.Count,
            (a, b) =>
            {
                var fit = fits[(a, b)] = MateFit.Of(match, free[a].Part, free[b].Part)!;
                return fit.Within ? fit.Cost : double.PositiveInfinity;
            }
        );
        return
        [
            .. BestPairing
                .Of(costs)
                .Pairs.OrderBy(p => p.Cost)
                .Select(p => PairOf(free[p.First].Part, free[p.Second].Part, fits[(p.First, p.Second)])),
        ];
    }

    private static MatePair PairOf(PartInput first, PartInput second, MateFit fit) =>
        new(first.Serial, second.Serial, fit.Difference, fit.Further, fit.SameFilmLot, Math.Round(fit.Cost, 4));

    /// <summary>The number of the film lot that a part is made of, if any.</summary>
    public static string? FilmLotOf(PartInput part, IReadOnlyDictionary<Guid, string> lots) =>
        part.FilmLotId is { } lot ? lots.GetValueOrDefault(lot) : null;
}
