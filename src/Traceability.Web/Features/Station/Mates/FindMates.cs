using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Quality.Pairing;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Lists;
using Traceability.Web.Features.Parts.Overview;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Station.Mates;

/// <summary>
/// Free finished parts for a slot, ranked by how well they match what is, or is about to be, in the positions that the route matches with
/// it.
/// </summary>
public sealed class FindMates(WorkshopContext db, DossierReader dossiers, ListParts parts) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/parts/{serial}/mates", HandleAsync)
            .Is(Subjects.Parts, "findMates", "Free parts that match best for a position, and the best pairing of all.");

    private const int MostParts = 500;

    /// <summary>A value of a part beside the rule's characteristic.</summary>
    public sealed record FurtherValue(string Characteristic, string Unit, decimal Value, decimal? Difference, decimal MaximumDifference);

    public sealed record Valued(string Serial, decimal Value, string? FilmLot = null);

    /// <summary>
    /// A free part. <c>Distance</c> is how unlike the worst of the others it is; 1 = as unlike as one of the differences may be.
    /// </summary>
    public sealed record Mate(
        string Serial,
        decimal Value,
        decimal? Difference,
        bool? Within,
        IReadOnlyList<FurtherValue> Further,
        string? FilmLot,
        bool? SameFilmLot,
        double? Distance
    );

    /// <summary>Two free parts that go together.</summary>
    public sealed record Pair(
        string First,
        string Second,
        decimal Difference,
        IReadOnlyList<decimal?> Further,
        bool? SameFilmLot,
        double Distance
    );

    /// <summary>
    /// The mates by rank, and the best pairing of all free parts: as many pairs within the limits as can be, and among those the closest.
    /// </summary>
    public sealed record Output(
        string Serial,
        string Position,
        string Characteristic,
        string Unit,
        decimal MaximumDifference,
        IReadOnlyList<MatchLimit> Further,
        bool OneFilmLot,
        IReadOnlyList<Valued> Against,
        IReadOnlyList<Mate> Mates,
        IReadOnlyList<Pair> Pairs
    );

    public static async Task<Results<Ok<Output>, Problem>> HandleAsync(
        string serial,
        string position,
        FindMates use,
        CancellationToken cancellation,
        string? with = null
    )
    {
        var (mates, refusal) = await use.RunAsync(serial, position, with, cancellation);
        return refusal is null ? TypedResults.Ok(mates) : ProblemAnswers.From(refusal);
    }

    /// <summary><paramref name="with"/> names a part that is about to be fitted in another of the matched positions.</summary>
    public async Task<(Output? Mates, Refusal? Refusal)> RunAsync(
        string serial,
        string position,
        string? with,
        CancellationToken cancellation
    )
    {
        if (await ReadPart.FindAsync(serial, dossiers, cancellation) is not { } parent)
        {
            return (null, Refusal.NotFound(StationSentences.ThereIsNoPartOrCarrier(serial)));
        }

        if (parent.Route.Stages.FirstOrDefault(s => s.Match?.Positions.Contains(position) == true) is not { Match: { } match } stage)
        {
            return (null, Refusal.Invalid("position", StationSentences.NothingIsMatchedAt(parent.Part.Serial, position)));
        }

        var candidate = with is null ? null : await ReadPart.FindAsync(with, dossiers, cancellation);
        if (with is not null && candidate is null)
        {
            return (null, Refusal.Invalid("with", StationSentences.ThereIsNoPartOrCarrier(with)));
        }

        var others = await OthersAsync(parent, match, position, candidate, cancellation);
        var free = await FreeAsync(stage.Slot(position)!.PartKind!, parent.Part.Model, match, cancellation);
        free.RemoveAll(f => others.Any(o => o.Part.Serial == f.Part.Serial));
        var lots = await LotNumbersAsync(free.Concat(others), cancellation);
        var unit = free.Concat(others).Select(o => o.Units.GetValueOrDefault(match.Characteristic)).FirstOrDefault() ?? "";
        return (
            new(
                parent.Part.Serial,
                position,
                match.Characteristic,
                unit,
                match.MaximumDifference,
                match.Further,
                match.SameFilmLot,
                [.. others.Select(o => new Valued(o.Part.Serial, o.Part.Values[match.Characteristic], NumberOf(o.Part, lots)))],
                Rank(free, others, match, lots),
                PairUp(free, match)
            ),
            null
        );
    }

    private static List<Mate> Rank(IEnumerable<Known> free, List<Known> others, MatchRule match, IReadOnlyDictionary<Guid, string> lots) =>
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
                NumberOf(part.Part, lots),
                SameLot(fits),
                Finite(worst?.Cost)
            ),
        ];

    private static FurtherValue? FurtherOf(Known part, MatchLimit limit, List<MateFit> fits, int i) =>
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

    private static List<Pair> PairUp(List<Known> free, MatchRule match)
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

    private static Pair PairOf(PartInput first, PartInput second, MateFit fit) =>
        new(first.Serial, second.Serial, fit.Difference, fit.Further, fit.SameFilmLot, Math.Round(fit.Cost, 4));

    private async Task<List<Known>> OthersAsync(
        Dossier parent,
        MatchRule match,
        string position,
        Dossier? candidate,
        CancellationToken cancellation
    )
    {
        var fitted = match
            .Positions.Where(p => p != position)
            .Select(p => parent.PresentFittings.GetValueOrDefault(p)?.ChildId)
            .OfType<Guid>()
            .ToArray();
        var inside = (await dossiers.LoadAsync(fitted, cancellation)).Values;
        return Knowing(candidate is null ? inside : inside.Append(candidate), match);
    }

    private async Task<List<Known>> FreeAsync(string kind, string model, MatchRule match, CancellationToken cancellation)
    {
        var free = await parts.RunAsync(new(kind, model, null, true), new(MostParts, null), cancellation);
        var serials = free.Items.Select(p => p.Serial).ToList();
        var ids = await db.Set<Part>().Where(p => serials.Contains(p.Serial)).Select(p => p.Id).ToArrayAsync(cancellation);
        return Knowing((await dossiers.LoadAsync(ids, cancellation)).Values, match);
    }

    private async Task<IReadOnlyDictionary<Guid, string>> LotNumbersAsync(IEnumerable<Known> parts, CancellationToken cancellation)
    {
        var ids = parts.Select(p => p.Part.FilmLotId).OfType<Guid>().Distinct().ToList();
        return ids.Count == 0
            ? new Dictionary<Guid, string>()
            : await db.Set<Lot>().Where(l => ids.Contains(l.Id)).ToDictionaryAsync(l => l.Id, l => l.Number, cancellation);
    }

    private static string? NumberOf(PartInput part, IReadOnlyDictionary<Guid, string> lots) =>
        part.FilmLotId is { } lot ? lots.GetValueOrDefault(lot) : null;

    private static List<Known> Knowing(IEnumerable<Dossier> dossiers, MatchRule match) =>
        [
            .. dossiers
                .Select(d => new Known(PartInput.Of("", d, false), UnitsIn(d.Route)))
                .Where(k => k.Part.Values.ContainsKey(match.Characteristic)),
        ];

    private static Dictionary<string, string> UnitsIn(Domain.Routes.Route route) =>
        route.Stages.SelectMany(s => s.Characteristics).DistinctBy(c => c.Name).ToDictionary(c => c.Name, c => c.Unit);

    /// <summary>A part with its values, and the units that its route gives them.</summary>
    private sealed record Known(PartInput Part, IReadOnlyDictionary<string, string> Units);
}
