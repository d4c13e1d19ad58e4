using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>Permits for concessions, with the parts on which they were used.</summary>
public sealed class PermitQuery(WorkshopContext db)
{
    /// <summary>The permits, the latest first; one by its number, or all.</summary>
    public async Task<IReadOnlyList<PermitStanding>> FindAsync(string? number, CancellationToken cancellation)
    {
        var permits = await db.Set<ConcessionPermit>()
            .AsNoTracking()
            .Where(p => number == null || p.Number == number)
            .OrderByDescending(p => p.Id)
            .ToListAsync(cancellation);
        var ids = permits.ConvertAll(p => (Guid?)p.Id);
        var used = (
            await db.Set<Disposition>()
                .Where(d => d.PermitId != null && ids.Contains(d.PermitId))
                .Select(d => new { d.PermitId, d.PartId })
                .ToListAsync(cancellation)
        ).ToLookup(d => d.PermitId, d => d.PartId);
        var lotIds = permits.Select(p => p.LotId).OfType<Guid>().ToList();
        var lots = await db.Set<Lot>().Where(l => lotIds.Contains(l.Id)).ToDictionaryAsync(l => l.Id, l => l.Number, cancellation);
        return [.. permits.Select(p => new PermitStanding(p, p.LotId is { } lot ? lots[lot] : null, used[p.Id].ToHashSet()))];
    }

    /// <summary>True when the permit's lot is in the part now; a permit without a lot is content.</summary>
    public async Task<bool> LotIsInsideAsync(ConcessionPermit permit, Guid partId, CancellationToken cancellation) =>
        permit.LotId is not { } lot
        || lot == partId
        || await db.Set<Containment>().AnyAsync(c => c.ContainerId == partId && c.ItemId == lot && c.PresentUntil == null, cancellation);
}
