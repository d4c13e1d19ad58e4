using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>A lot with where it stands.</summary>
public sealed record LotStanding(Lot Lot, LotState State, string? Reason, IReadOnlyList<string> Holds);

/// <summary>Lots with their latest decision and open holds.</summary>
public sealed class LotQuery(WorkshopContext db)
{
    /// <summary>Adds state and holds to some lots.</summary>
    public async Task<IReadOnlyList<LotStanding>> StandingOfAsync(IQueryable<Lot> lots, CancellationToken cancellation)
    {
        var rows = await lots.AsNoTracking().Select(l => new
        {
            Lot = l,
            Decision = db.Set<LotDecision>().Where(d => d.LotId == l.Id).OrderByDescending(d => d.RecordedAt).ThenByDescending(d => d.Id).FirstOrDefault(),
            Holds = db.Set<Hold>().Where(h => h.LotId == l.Id && !db.Set<HoldRelease>().Any(r => r.HoldId == h.Id)).Select(h => h.Reason).ToList(),
        }).ToListAsync(cancellation);
        return [.. rows.Select(r => new LotStanding(r.Lot, r.Decision?.State ?? LotState.Quarantined, r.Decision?.Reason, r.Holds))];
    }

    /// <summary>The lots with these numbers.</summary>
    public Task<IReadOnlyList<LotStanding>> FindAsync(IReadOnlyCollection<string> numbers, CancellationToken cancellation) =>
        StandingOfAsync(db.Set<Lot>().Where(l => numbers.Contains(l.Number)), cancellation);
}
