using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Web.Features.Station.ScanBox;

/// <summary>Reads what the station page shows beside the dossier: names of people, parts and lots.</summary>
public sealed class StationViewReader(WorkshopContext db, NeedsReader needs, StationSignIn signIn)
{
    public async Task<StationView> ReadAsync(Seat seat, CancellationToken cancellation)
    {
        var part = await needs.ReadAsync(seat.Session.Part, signIn.Actor, cancellation);
        seat = seat with { Session = signIn.InStep(seat.Session, part?.Needs) };
        var people = part is null ? [] : part.Dossier.Attempts.Select(a => a.Attempt.By).Append(part.Dossier.Part.By).Distinct().ToList();
        var fittings = part?.Dossier.PresentFittings.Values.ToList() ?? [];
        var (children, lots) = (fittings.Select(f => f.ChildId).OfType<Guid>().ToList(), fittings.Select(f => f.LotId).OfType<Guid>().ToList());
        var names = people.Count == 0 ? [] : await db.Set<Person>().Where(p => people.Contains(p.Id)).ToDictionaryAsync(p => p.Id, p => p.Name, cancellation);
        var items = children.Count == 0 ? [] : await db.Set<Part>().Where(p => children.Contains(p.Id)).ToDictionaryAsync(p => p.Id, p => p.Serial, cancellation);
        foreach (var lot in lots.Count == 0 ? [] : await db.Set<Lot>().Where(l => lots.Contains(l.Id)).Select(l => new { l.Id, l.Number }).ToListAsync(cancellation))
        {
            items[lot.Id] = lot.Number;
        }

        return new(seat, signIn.Actor, part, names, items, await LoadAsync(part?.Open, cancellation));
    }

    private async Task<IReadOnlyList<string>> LoadAsync(AttemptView? open, CancellationToken cancellation) => open?.Attempt.LoadId is { } load
        ? await db.Set<Attempt>().Where(a => a.LoadId == load && !db.Set<AttemptEnding>().Any(e => e.AttemptId == a.Id))
            .Join(db.Set<Part>(), a => a.PartId, p => p.Id, (a, p) => p.Serial).OrderBy(s => s).ToListAsync(cancellation)
        : [];
}
