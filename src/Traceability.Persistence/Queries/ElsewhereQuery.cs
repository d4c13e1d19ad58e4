using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>
/// What other subjects' facts say about a part: where it was fitted and taken out, and, for a film lot, what was decided about the lot.
/// </summary>
public sealed class ElsewhereQuery(WorkshopContext db)
{
    /// <summary>Those facts, oldest first.</summary>
    public async Task<IReadOnlyList<Fact>> RunAsync(Part part, CancellationToken cancellation)
    {
        var fittings = await db.Set<Fitting>().AsNoTracking().Where(f => f.ChildId == part.Id).ToListAsync(cancellation);
        var ids = fittings.ConvertAll(f => f.Id);
        List<Fact> facts =
        [
            .. fittings,
            .. await db.Set<Removal>().AsNoTracking().Where(r => ids.Contains(r.FittingId)).ToListAsync(cancellation),
        ];
        if (part.Kind == PartKinds.FilmLot)
        {
            facts.AddRange(await db.Set<Lot>().AsNoTracking().Where(l => l.Id == part.Id).ToListAsync(cancellation));
            facts.AddRange(await db.Set<LotDecision>().AsNoTracking().Where(d => d.LotId == part.Id).ToListAsync(cancellation));
            var holds = await db.Set<Hold>().AsNoTracking().Where(h => h.LotId == part.Id).ToListAsync(cancellation);
            var held = holds.ConvertAll(h => h.Id);
            facts.AddRange([
                .. holds,
                .. await db.Set<HoldRelease>().AsNoTracking().Where(r => held.Contains(r.HoldId)).ToListAsync(cancellation),
            ]);
        }

        return facts;
    }
}
