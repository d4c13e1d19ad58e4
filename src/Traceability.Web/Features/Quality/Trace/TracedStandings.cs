using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Standings;
using Traceability.Domain.Quality.Tracing;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;

namespace Traceability.Web.Features.Quality.Trace;

/// <summary>
/// Says of traced parts what they are and where they are: now from the kept standings, at a past moment from the facts until then.
/// </summary>
public sealed class TracedStandings(WorkshopContext db, DossierReader dossiers, RouteShelf routes, PartsNow now, WorkshopCalendar calendar)
{
    private const int Batch = 200;

    private sealed record Described(Part Part, PartState State, bool Finished, string? Stage, Standing Standing, Departure? Departure);

    /// <summary>The rows in their order, with names and places.</summary>
    public async Task<IReadOnlyList<TracedPart>> DescribeAsync(
        IReadOnlyList<TraceRow> rows,
        DateTimeOffset? at,
        CancellationToken cancellation
    )
    {
        var ids = rows.Select(r => r.PartId).Concat(rows.Select(r => r.OutermostId).OfType<Guid>()).Distinct().ToArray();
        var parts = at is { } moment
            ? await ThenAsync(
                ids,
                rows.Where(r => r.OutermostId is not null).DistinctBy(r => r.PartId).ToDictionary(r => r.PartId, r => r.OutermostId!.Value),
                moment,
                cancellation
            )
            : await NowAsync(ids, cancellation);
        return [.. rows.Select(r => Describe(r, parts[r.PartId], parts[r.OutermostId ?? r.PartId]))];
    }

    private static TracedPart Describe(TraceRow row, Described part, Described outermost)
    {
        var place = WhereaboutsOf.Part(part.Standing.Code, outermost.Finished);
        var left = place is Whereabouts.Shipped or Whereabouts.Returned ? part.Departure : null;
        return new(
            part.Part.Serial,
            part.Part.Kind,
            part.Part.Model,
            row.Present,
            row.Direct,
            Math.Max(1, row.Present ? row.PresentTimes : row.Times),
            row.Since,
            row.Present ? null : row.Until,
            Words.Of(part.State),
            WordOf(place),
            place == Whereabouts.InWork ? outermost.Stage : null,
            row.OutermostId is null ? null : outermost.Part.Serial,
            left?.At,
            left?.CustomerReference,
            StandingAnswer.Of(part.Standing)
        );
    }

    private static string WordOf(Whereabouts place) => place == Whereabouts.InWork ? "in-work" : place.ToString().ToLowerInvariant();

    private async Task<IReadOnlyDictionary<Guid, Described>> NowAsync(Guid[] ids, CancellationToken cancellation)
    {
        var found = await (
            from p in db.Set<Part>()
            join s in db.Set<PartStanding>() on p.Id equals s.PartId
            where ids.Contains(p.Id)
            select new { Part = p, Kept = s }
        )
            .AsNoTracking()
            .ToListAsync(cancellation);
        var standings = await now.OfAsync(ids, cancellation);
        var described = new Dictionary<Guid, Described>();
        foreach (var f in found)
        {
            var stage = f.Kept.Stage is { } code
                ? (await routes.GetAsync(db, f.Part.RouteId, cancellation)).Find(code)?.Title ?? code
                : null;
            var part = standings[f.Part.Id];
            described[f.Part.Id] = new(f.Part, Words.PartStateOf(f.Kept.State), f.Kept.Finished, stage, part.Standing, part.Exit.Departure);
        }

        return described;
    }

    /// <summary>
    /// Holds and quarantines of things inside are told as they are now, in the list of today alone: of a past day only the part's own facts
    /// and its place are.
    /// </summary>
    private async Task<IReadOnlyDictionary<Guid, Described>> ThenAsync(
        Guid[] ids,
        Dictionary<Guid, Guid> outermost,
        DateTimeOffset at,
        CancellationToken cancellation
    )
    {
        var then = new Dictionary<Guid, Dossier>();
        foreach (var some in ids.Chunk(Batch))
        {
            foreach (var (id, whole) in await dossiers.LoadAsync(some, cancellation))
            {
                then[id] = new Dossier(whole.Part, whole.Route, [.. whole.Facts.Where(f => f.OccurredAt <= at)], PartPlacement.None);
            }
        }

        return then
            .Values.Select(d => outermost.TryGetValue(d.Part.Id, out var around) ? d.With([], Inside(then[around])) : d)
            .ToDictionary(
                d => d.Part.Id,
                d => new Described(
                    d.Part,
                    d.State(),
                    d.IsFinished(),
                    d.NextStage()?.Title,
                    Standing.Of(d, new(at, calendar)),
                    StandingGrounds.Of(d, new(at, calendar)).Exit.Departure
                )
            );

        static PartPlacement Inside(Dossier around) =>
            new(null, around.Part.Serial, []) { Outermost = new(around.Part.Serial, around.Exit) };
    }
}
