using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Stages.Methods;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>Brings the bytes of an attempt's evidence.</summary>
public sealed class EvidenceQuery(WorkshopContext db)
{
    /// <summary>The files of an attempt, or of its load, oldest first.</summary>
    public async Task<IReadOnlyList<EvidenceFile>> FilesOfAsync(Dossier dossier, Guid attemptId, CancellationToken cancellation)
    {
        var records = dossier.Attempts.FirstOrDefault(a => a.Id == attemptId)?.Evidence ?? [];
        if (records.Count == 0)
        {
            return [];
        }

        var hashes = records.Select(r => r.Sha256).ToList();
        var bytes = await db.Set<StoredFile>()
            .AsNoTracking()
            .Where(f => hashes.Contains(f.Sha256))
            .ToDictionaryAsync(f => f.Sha256, f => f.Bytes, cancellation);
        return [.. records.Select(r => new EvidenceFile(r.Id, r.Name, r.Kind, bytes[r.Sha256], r.FullScaleV))];
    }
}
