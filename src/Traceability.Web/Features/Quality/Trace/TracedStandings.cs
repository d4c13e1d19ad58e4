using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Quality.Tracing;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Quality.Trace;

/// <summary>Says of traced parts what they are and where they are: now from the kept standings, at a past moment from the facts until then.</summary>
public sealed class TracedStandings(WorkshopContext db, DossierReader dossiers, RouteShelf routes)
{
    private const int Batch = 200;

    private sealed record Standing(Part Part, PartState State, bool Finished, string? Stage, Shipment? Shipped);

    /// <summary>The rows in their order, with names and places.</summary>
    public async Task<IReadOnlyList<TracedPart>> DescribeAsync(IReadOnlyList<TraceRow> rows, DateTimeOffset? at, CancellationToken cancellation)
    {
        var ids = rows.Select(r => r.PartId).Concat(rows.Select(r => r.OutermostId).OfType<Guid>()).Distinct().ToArray();
        var inside = rows.Where(r => r.OutermostId is not null).Select(r => r.PartId).ToHashSet();
        var standings = at is { } moment ? await ThenAsync(ids, inside, moment, cancellation) : await NowAsync(ids, cancellation);
        return [.. rows.Select(r => Describe(r, standings[r.PartId], standings[r.OutermostId ?? r.PartId]))];
    }

    private static TracedPart Describe(TraceRow row, Standing part, Standing outermost)
    {
        var place = WhereaboutsOf.Part(part.State, outermost.State, outermost.Finished);
        var shipped = place == Whereabouts.Shipped ? outermost.Shipped : null;
        return new(
            part.Part.Serial, part.Part.Kind, part.Part.Model, row.Present, row.Direct, Math.Max(1, row.Present ? row.PresentTimes : row.Times), row.Since, row.Present ? null : row.Until,
            Words.Of(part.State), WordOf(place), place == Whereabouts.InWork ? outermost.Stage : null, row.OutermostId is null ? null : outermost.Part.Serial, shipped?.OccurredAt, shipped?.CustomerReference);
    }

    private static string WordOf(Whereabouts place) => place == Whereabouts.InWork ? "in-work" : place.ToString().ToLowerInvariant();

    private async Task<IReadOnlyDictionary<Guid, Standing>> NowAsync(Guid[] ids, CancellationToken cancellation)
    {
        var found = await (
            from p in db.Set<Part>()
            join s in db.Set<PartStanding>() on p.Id equals s.PartId
            where ids.Contains(p.Id)
            select new { Part = p, Standing = s }).AsNoTracking().ToListAsync(cancellation);
        var gone = found.Where(f => f.Standing.State == Words.Of(PartState.Shipped)).Select(f => f.Part.Id).ToList();
        var shipments = (await db.Set<Shipment>().AsNoTracking().Where(s => gone.Contains(s.PartId)).ToListAsync(cancellation)).GroupBy(s => s.PartId).ToDictionary(g => g.Key, g => g.MaxBy(s => s.RecordedAt));
        var standings = new Dictionary<Guid, Standing>();
        foreach (var f in found)
        {
            var stage = f.Standing.Stage is { } code ? (await routes.GetAsync(db, f.Part.RouteId, cancellation)).Find(code)?.Title ?? code : null;
            standings[f.Part.Id] = new(f.Part, Words.PartStateOf(f.Standing.State), f.Standing.Finished, stage, shipments.GetValueOrDefault(f.Part.Id));
        }

        return standings;
    }

    private async Task<IReadOnlyDictionary<Guid, Standing>> ThenAsync(Guid[] ids, HashSet<Guid> inside, DateTimeOffset at, CancellationToken cancellation)
    {
        var standings = new Dictionary<Guid, Standing>();
        foreach (var some in ids.Chunk(Batch))
        {
            foreach (var (id, whole) in await dossiers.LoadAsync(some, cancellation))
            {
                var around = new Surroundings(null, inside.Contains(id) ? QualitySentences.AnotherPart : null, []);
                var then = new Dossier(whole.Part, whole.Route, [.. whole.Facts.Where(f => f.OccurredAt <= at)], around);
                standings[id] = new(whole.Part, then.State(), then.IsFinished(), then.NextStage()?.Title, then.Shipped);
            }
        }

        return standings;
    }
}
