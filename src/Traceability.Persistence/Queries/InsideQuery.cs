using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>Everything that was ever fitted in a part or in a part inside it, with what came out again.</summary>
public sealed record Inside(
    ILookup<Guid, Fitting> FittingsByParent,
    IReadOnlyDictionary<Guid, Removal> RemovalByFitting,
    IReadOnlyDictionary<Guid, Part> Parts,
    IReadOnlyDictionary<Guid, Lot> Lots
);

/// <summary>Reads what a part is made of, down to the lots.</summary>
public sealed class InsideQuery(WorkshopContext db, NameQuery names)
{
    /// <summary>When the last work was recorded on anything that is in the part now; null when nothing ever was.</summary>
    public async Task<DateTimeOffset?> LastWorkAsync(Guid partId, CancellationToken cancellation) =>
        await db
            .Database.SqlQuery<DateTimeOffset?>(
                $"""
                select max(w.recorded_at) as "Value"
                from containments c
                join (
                    select part_id, recorded_at from attempt_endings union all select part_id, recorded_at from removals
                    union all select part_id, recorded_at from corrections union all select part_id, recorded_at from dispositions
                ) w on w.part_id = c.item_id
                where c.container_id = {partId} and not c.item_is_lot and c.present_until is null
                """
            )
            .SingleAsync(cancellation);

    /// <summary>All fittings below the part, present and removed.</summary>
    public async Task<Inside> RunAsync(Guid partId, CancellationToken cancellation)
    {
        var fittings = await db.Set<Fitting>()
            .FromSql(
                $"""
                with recursive inside as (
                    select id, child_id from fittings where part_id = {partId}
                    union
                    select f.id, f.child_id from fittings f join inside i on f.part_id = i.child_id
                )
                select f.* from fittings f where f.id in (select id from inside)
                """
            )
            .AsNoTracking()
            .ToListAsync(cancellation);
        var ids = fittings.ConvertAll(f => f.Id);
        var removals = await db.Set<Removal>()
            .AsNoTracking()
            .Where(r => ids.Contains(r.FittingId))
            .ToDictionaryAsync(r => r.FittingId, cancellation);
        return new(
            fittings.OrderBy(f => f.RecordedAt).ThenBy(f => f.Id).ToLookup(f => f.PartId),
            removals,
            await names.PartsAsync(fittings.Select(f => f.ChildId).OfType<Guid>(), cancellation),
            await names.LotsAsync(fittings.Select(f => f.LotId).OfType<Guid>(), cancellation)
        );
    }
}
