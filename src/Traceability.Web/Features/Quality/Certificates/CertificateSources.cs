using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Certificates;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Stages.Methods;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Quality.Certificates;

/// <summary>Gathers everything that a certificate is made from.</summary>
public sealed class CertificateSources(WorkshopContext db, DossierReader dossiers, InstrumentQuery instruments, NameQuery names)
{
    /// <summary>The facts of a unit and of all that is in it now.</summary>
    public async Task<CertificateFacts> OfAsync(Dossier unit, CancellationToken cancellation)
    {
        var items = await db.Set<Containment>()
            .Where(c => c.ContainerId == unit.Part.Id && c.PresentUntil == null)
            .Select(c => new { c.ItemId, c.ItemIsLot })
            .Distinct()
            .ToListAsync(cancellation);
        var inside = await dossiers.LoadAsync([.. items.Where(i => !i.ItemIsLot).Select(i => i.ItemId)], cancellation);
        Dossier[] all = [unit, .. inside.Values];
        var codes = all.SelectMany(d => d.Of<InstrumentUse>()).Select(u => u.InstrumentCode).Distinct().ToList();
        var people = await names.PeopleAsync(all.SelectMany(d => d.Facts).Select(f => f.By), cancellation);
        return new(
            unit,
            inside,
            await names.LotsAsync(items.Where(i => i.ItemIsLot).Select(i => i.ItemId), cancellation),
            await instruments.FindAsync(codes, cancellation),
            people.ToDictionary(p => p.Key, p => p.Value.Name),
            await FilesAsync(all, cancellation)
        )
        {
            RoleGrants = await db.Set<RoleGrant>()
                .AsNoTracking()
                .Where(g => people.Keys.Contains(g.PersonId))
                .OrderBy(g => g.RecordedAt)
                .ToListAsync(cancellation),
            ItemNames = await ItemNamesAsync(all, cancellation),
        };
    }

    /// <summary>Also of what was taken out again: a revision says what is no longer inside.</summary>
    private async Task<IReadOnlyDictionary<Guid, string>> ItemNamesAsync(Dossier[] parts, CancellationToken cancellation)
    {
        var fittings = parts.SelectMany(p => p.Of<Fitting>()).ToList();
        var children = await names.PartsAsync(fittings.Select(f => f.ChildId).OfType<Guid>(), cancellation);
        var lots = await names.LotsAsync(fittings.Select(f => f.LotId).OfType<Guid>(), cancellation);
        return children.Select(c => (c.Key, c.Value.Serial)).Concat(lots.Select(l => (l.Key, l.Value.Number))).ToDictionary();
    }

    private async Task<IReadOnlyDictionary<Guid, EvidenceFile>> FilesAsync(Dossier[] parts, CancellationToken cancellation)
    {
        var records = parts.SelectMany(CertificateFacts.DrawnFilesOf).ToList();
        var hashes = records.Select(r => r.Sha256).Distinct().ToList();
        var bytes = await db.Set<StoredFile>()
            .AsNoTracking()
            .Where(f => hashes.Contains(f.Sha256))
            .ToDictionaryAsync(f => f.Sha256, f => f.Bytes, cancellation);
        return records
            .DistinctBy(r => r.Id)
            .ToDictionary(r => r.Id, r => new EvidenceFile(r.Id, r.Name, r.Kind, bytes[r.Sha256], r.FullScaleV));
    }
}
