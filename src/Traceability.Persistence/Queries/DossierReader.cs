using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>Loads dossiers: a part's facts, its route and its surroundings.</summary>
public sealed class DossierReader(WorkshopContext db, RouteShelf routes)
{
    /// <summary>The dossiers of these parts, by id; unknown ids are left out.</summary>
    public async Task<IReadOnlyDictionary<Guid, Dossier>> LoadAsync(Guid[] partIds, CancellationToken cancellation)
    {
        if (partIds.Length == 0)
        {
            return new Dictionary<Guid, Dossier>();
        }

        var facts = await PartFactsQuery.RunAsync(db, partIds, cancellation);
        var around = await SurroundingsQuery.RunAsync(db, partIds, cancellation);
        var dossiers = new Dictionary<Guid, Dossier>();
        foreach (var group in facts)
        {
            var part = group.OfType<Part>().First();
            var route = await routes.GetAsync(db, part.RouteId, cancellation);
            dossiers[part.Id] = new(part, route, [.. group], around.GetValueOrDefault(part.Id, Surroundings.None));
        }

        return dossiers;
    }

    /// <summary>One dossier, or null.</summary>
    public async Task<Dossier?> LoadAsync(Guid partId, CancellationToken cancellation) => (await LoadAsync([partId], cancellation)).GetValueOrDefault(partId);

    /// <summary>The id of the part with that serial, or now in that carrier; null when there is none.</summary>
    public async Task<Guid?> FindAsync(string serialOrCarrier, CancellationToken cancellation)
    {
        var text = serialOrCarrier.Trim().ToUpperInvariant();
        return await db.Set<Part>().Where(p => p.Serial == text).Select(p => (Guid?)p.Id).FirstOrDefaultAsync(cancellation)
            ?? await db.Set<PartStanding>().Where(s => s.CarrierCode == text).Select(s => (Guid?)s.PartId).FirstOrDefaultAsync(cancellation);
    }
}
