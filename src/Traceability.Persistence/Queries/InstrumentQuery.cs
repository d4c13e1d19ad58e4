using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>Instruments with their calibrations, checks and open holds.</summary>
public sealed class InstrumentQuery(WorkshopContext db)
{
    /// <summary>
    /// The instruments with these codes, or all when none are given; retired ones too, those entered by mistake never. A calibration or
    /// check that another took the place of counts no more.
    /// </summary>
    public async Task<IReadOnlyList<InstrumentStanding>> FindAsync(IReadOnlyCollection<string>? codes, CancellationToken cancellation)
    {
        if (codes is { Count: 0 })
        {
            return [];
        }

        var instruments = await db.Kept<Instrument>()
            .AsNoTracking()
            .Where(i => codes == null || codes.Contains(i.Code))
            .OrderBy(i => i.Code)
            .ToListAsync(cancellation);
        var ids = instruments.ConvertAll(i => i.Id);
        var calibrations = (
            await db.Set<Calibration>()
                .AsNoTracking()
                .Where(c => ids.Contains(c.InstrumentId))
                .OrderBy(c => c.RecordedAt)
                .ToListAsync(cancellation)
        ).ToLookup(c => c.InstrumentId);
        var checks = (
            await db.Set<InstrumentCheck>()
                .AsNoTracking()
                .Where(c => ids.Contains(c.InstrumentId) && !db.Set<InstrumentCheck>().Any(n => n.Replaces == c.Id))
                .OrderBy(c => c.RecordedAt)
                .ToListAsync(cancellation)
        ).ToLookup(c => c.InstrumentId);
        var holds = (
            await db.Set<Hold>()
                .AsNoTracking()
                .Where(h => h.InstrumentId != null && ids.Contains(h.InstrumentId.Value))
                .Select(h => new { Hold = h, Lifted = db.Set<HoldRelease>().Any(r => r.HoldId == h.Id) })
                .ToListAsync(cancellation)
        ).ToLookup(h => h.Hold.InstrumentId!.Value);
        var setAside = await db.SetAsideAsync(SetupSort.Instrument, cancellation);
        var names = await db.CorrectedNamesAsync(ids, cancellation);
        return
        [
            .. instruments.Select(i => new InstrumentStanding(
                names.TryGetValue(i.Id, out var name) ? i with { Title = name } : i,
                StandingCalibrations.Of([.. calibrations[i.Id]]),
                [.. checks[i.Id]],
                [.. holds[i.Id].Where(h => !h.Lifted).Select(h => h.Hold)]
            )
            {
                Retired = setAside.GetValueOrDefault(i.Id),
                LiftedHolds = [.. holds[i.Id].Where(h => h.Lifted).Select(h => h.Hold)],
            }),
        ];
    }
}
