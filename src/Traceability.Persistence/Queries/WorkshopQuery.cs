using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>What the workshop says about itself, from the facts.</summary>
public sealed class WorkshopQuery(WorkshopContext db)
{
    /// <summary>The revision in force; null before the first.</summary>
    public Task<WorkshopRevision?> LatestAsync(CancellationToken cancellation) =>
        db.Set<WorkshopRevision>().AsNoTracking().OrderByDescending(r => r.Revision).FirstOrDefaultAsync(cancellation);

    /// <summary>All revisions, newest first.</summary>
    public Task<List<WorkshopRevision>> AllAsync(CancellationToken cancellation) =>
        db.Set<WorkshopRevision>().AsNoTracking().OrderByDescending(r => r.Revision).ToListAsync(cancellation);

    /// <summary>The bytes of a revision's logo; null when it has none.</summary>
    public async Task<byte[]?> LogoAsync(WorkshopRevision? revision, CancellationToken cancellation) =>
        revision?.LogoSha256 is not { } sha256
            ? null
            : await db.Set<StoredFile>().Where(f => f.Sha256 == sha256).Select(f => f.Bytes).SingleAsync(cancellation);
}
