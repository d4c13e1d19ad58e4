using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts;
using Traceability.Web.Features.Parts.Lists;
using Traceability.Web.Features.Parts.Work;
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

    /// <param name="serial" example="CD26-00034">The serial of the part that is being built, or its carrier.</param>
    /// <param name="position" example="rear-diaphragm">The position for which a part is wanted.</param>
    /// <param name="with" example="DD26-00412">A part that is about to be fitted in another of the matched positions.</param>
    public static async Task<Results<Ok<MatesAnswer>, Problem>> HandleAsync(
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
    public async Task<(MatesAnswer? Mates, Refusal? Refusal)> RunAsync(
        string serial,
        string position,
        string? with,
        CancellationToken cancellation
    )
    {
        if (await PartLookup.FindAsync(serial, dossiers, cancellation) is not { } parent)
        {
            return (null, Refusal.NotFound(PartsSentences.ThereIsNoPartOrCarrier(serial)));
        }

        if (parent.Route.Stages.FirstOrDefault(s => s.Match?.Positions.Contains(position) == true) is not { Match: { } match } stage)
        {
            return (null, Refusal.Invalid("position", StationSentences.NothingIsMatchedAt(parent.Part.Serial, position)));
        }

        var candidate = with is null ? null : await PartLookup.FindAsync(with, dossiers, cancellation);
        if (with is not null && candidate is null)
        {
            return (null, Refusal.Invalid("with", PartsSentences.ThereIsNoPartOrCarrier(with)));
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
                [
                    .. others.Select(o => new MateValue(
                        o.Part.Serial,
                        o.Part.Values[match.Characteristic],
                        MateRanking.FilmLotOf(o.Part, lots)
                    )),
                ],
                MateRanking.Rank(free, others, match, lots),
                MateRanking.PairUp(free, match)
            ),
            null
        );
    }

    private async Task<List<MateCandidate>> OthersAsync(
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
        return CandidatesOf(candidate is null ? inside : inside.Append(candidate), match);
    }

    private async Task<List<MateCandidate>> FreeAsync(string kind, string model, MatchRule match, CancellationToken cancellation)
    {
        var free = await parts.RunAsync(new(kind, model, null, true), new(MostParts, null), cancellation);
        var serials = free.Items.Select(p => p.Serial).ToList();
        var ids = await db.Set<Part>().Where(p => serials.Contains(p.Serial)).Select(p => p.Id).ToArrayAsync(cancellation);
        return CandidatesOf((await dossiers.LoadAsync(ids, cancellation)).Values, match);
    }

    private async Task<IReadOnlyDictionary<Guid, string>> LotNumbersAsync(IEnumerable<MateCandidate> parts, CancellationToken cancellation)
    {
        var ids = parts.Select(p => p.Part.FilmLotId).OfType<Guid>().Distinct().ToList();
        return ids.Count == 0
            ? new Dictionary<Guid, string>()
            : await db.Set<Lot>().Where(l => ids.Contains(l.Id)).ToDictionaryAsync(l => l.Id, l => l.Number, cancellation);
    }

    private static List<MateCandidate> CandidatesOf(IEnumerable<Dossier> dossiers, MatchRule match) =>
        [
            .. dossiers
                .Select(d => new MateCandidate(PartInput.Of("", d, false), UnitsIn(d.Route)))
                .Where(k => k.Part.Values.ContainsKey(match.Characteristic)),
        ];

    private static Dictionary<string, string> UnitsIn(Domain.Routes.Route route) =>
        route.Stages.SelectMany(s => s.Characteristics).DistinctBy(c => c.Name).ToDictionary(c => c.Name, c => c.Unit);
}
