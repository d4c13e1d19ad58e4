using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Station.Loads;

/// <summary>A load with its parts, all locked.</summary>
public sealed record LockedLoad(Load Load, IReadOnlyList<OpenPart> Parts)
{
    /// <summary>The parts whose attempt in this load is still open.</summary>
    public IEnumerable<(OpenPart Part, AttemptView Attempt)> StillOpen =>
        from part in Parts
        let attempt = part.Dossier.Attempts.First(a => a.Attempt.LoadId == Load.Id)
        where attempt.Ending is null
        select (part, attempt);
}

/// <summary>Finds and locks a load before something is decided about it.</summary>
public sealed class LoadLocks(WorkshopContext db, Writes writes)
{
    /// <summary>Locks all parts of a load; null when there is no such load.</summary>
    public async Task<LockedLoad?> OpenAsync(Guid loadId, CancellationToken cancellation)
    {
        if (await db.Set<Load>().AsNoTracking().FirstOrDefaultAsync(l => l.Id == loadId, cancellation) is not { } load)
        {
            return null;
        }

        var ids = await db.Set<Attempt>().Where(a => a.LoadId == loadId).Select(a => a.PartId).ToListAsync(cancellation);
        var parts = await writes.Book.OpenAsync(ids, cancellation);
        return new(load, [.. parts.Values.OrderBy(p => p.Dossier.Part.Serial, StringComparer.Ordinal)]);
    }
}
