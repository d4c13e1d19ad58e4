using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.Certificates;

/// <summary>The two files of a revision.</summary>
public enum CertificateForm
{
    Pdf,
    Json,
}

/// <summary>Certificates as they were issued: their revisions, and their files byte for byte.</summary>
public sealed class IssuedCertificates(WorkshopContext db)
{
    /// <summary>All revisions of a part, oldest first; null when there is no such part.</summary>
    public async Task<IReadOnlyList<IssuedCertificate>?> OfAsync(string serial, CancellationToken cancellation)
    {
        var code = serial.Trim().ToUpperInvariant();
        var id = await db.Set<Part>().Where(p => p.Serial == code).Select(p => (Guid?)p.Id).FirstOrDefaultAsync(cancellation);
        return id is null
            ? null
            : await db.Set<Certificate>()
                .Where(c => c.PartId == id)
                .OrderBy(c => c.Revision)
                .Select(c => new IssuedCertificate(c.Revision, c.PublicId, c.OccurredAt, c.PdfSha256, c.DocumentSha256))
                .ToListAsync(cancellation);
    }

    /// <summary>A file of one revision; of the latest when none is named.</summary>
    public async Task<Results<FileContentHttpResult, Problem>> FileAsync(
        string serial,
        int? revision,
        CertificateForm kind,
        HttpContext http,
        CancellationToken cancellation
    )
    {
        var issued = await OfAsync(serial, cancellation);
        var found = revision is null ? (issued is [.., var latest] ? latest : null) : issued?.FirstOrDefault(c => c.Revision == revision);
        if (found is null)
        {
            return ProblemAnswers.From(
                Refusal.NotFound(
                    issued is null ? QualitySentences.ThereIsNoPart(serial)
                    : revision is null ? QualitySentences.HasNoBirthCertificateYet(serial)
                    : QualitySentences.HasNoBirthCertificateOfRevision(serial, revision)
                )
            );
        }

        var (hash, mediaType, extension) =
            kind == CertificateForm.Pdf ? (found.PdfSha256, "application/pdf", "pdf") : (found.DocumentSha256, "application/json", "json");
        var file = await db.Set<StoredFile>().AsNoTracking().SingleAsync(f => f.Sha256 == hash, cancellation);
        http.Response.Headers.ContentDisposition =
            $"inline; filename=\"{serial.Trim().ToUpperInvariant()}-certificate-{found.Revision}.{extension}\"";
        return TypedResults.Bytes(file.Bytes, mediaType);
    }
}
