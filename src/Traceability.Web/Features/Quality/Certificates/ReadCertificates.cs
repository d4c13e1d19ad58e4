using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Certificates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Certificates;

/// <summary>Certificates as they were issued.</summary>
public sealed class ReadCertificates(WorkshopContext db) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/parts/{serial}/certificates", ListAsync)
            .Is(Subjects.Certificates, "listCertificates", "The revisions of a unit's birth certificate.");
        api.MapGet("/parts/{serial}/certificate.pdf", LatestPdfAsync)
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf")
            .Is(Subjects.Certificates, "readLatestCertificatePdf", "The latest certificate as it was issued.");
        api.MapGet("/parts/{serial}/certificates/{revision:int}.pdf", PdfAsync)
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf")
            .Is(Subjects.Certificates, "readCertificatePdf", "One revision as it was issued.");
        api.MapGet("/parts/{serial}/certificates/{revision:int}.json", JsonAsync)
            .Produces<CertificateDocument>()
            .Is(Subjects.Certificates, "readCertificate", "The same document for programs.");
    }

    public sealed record Issued(int Revision, string CertificateId, DateTimeOffset IssuedAt, string PdfSha256, string DocumentSha256);

    public static async Task<Results<Table<Page<Issued>>, Problem>> ListAsync(
        string serial,
        HttpContext http,
        PageRequest page,
        ReadCertificates use,
        CancellationToken cancellation
    ) =>
        await use.AllAsync(serial, cancellation) is { } all
            ? Csv.Answer(page.Part(all, c => c.PdfSha256))
            : ProblemAnswers.From(Refusal.NotFound(QualitySentences.ThereIsNoPart(serial)));

    public static Task<Results<FileContentHttpResult, Problem>> LatestPdfAsync(
        string serial,
        HttpContext http,
        ReadCertificates use,
        CancellationToken cancellation
    ) => use.FileAsync(serial, null, c => c.PdfSha256, "application/pdf", "pdf", http, cancellation);

    public static Task<Results<FileContentHttpResult, Problem>> PdfAsync(
        string serial,
        int revision,
        HttpContext http,
        ReadCertificates use,
        CancellationToken cancellation
    ) => use.FileAsync(serial, revision, c => c.PdfSha256, "application/pdf", "pdf", http, cancellation);

    public static Task<Results<FileContentHttpResult, Problem>> JsonAsync(
        string serial,
        int revision,
        HttpContext http,
        ReadCertificates use,
        CancellationToken cancellation
    ) => use.FileAsync(serial, revision, c => c.DocumentSha256, "application/json", "json", http, cancellation);

    /// <summary>All revisions of a part, oldest first; null when there is no such part.</summary>
    public async Task<IReadOnlyList<Issued>?> AllAsync(string serial, CancellationToken cancellation)
    {
        var code = serial.Trim().ToUpperInvariant();
        var id = await db.Set<Part>().Where(p => p.Serial == code).Select(p => (Guid?)p.Id).FirstOrDefaultAsync(cancellation);
        return id is null
            ? null
            : await db.Set<Certificate>()
                .Where(c => c.PartId == id)
                .OrderBy(c => c.Revision)
                .Select(c => new Issued(c.Revision, c.PublicId, c.OccurredAt, c.PdfSha256, c.DocumentSha256))
                .ToListAsync(cancellation);
    }

    private async Task<Results<FileContentHttpResult, Problem>> FileAsync(
        string serial,
        int? revision,
        Func<Issued, string> hashOf,
        string mediaType,
        string extension,
        HttpContext http,
        CancellationToken cancellation
    )
    {
        var issued = await AllAsync(serial, cancellation);
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

        var hash = hashOf(found);
        var file = await db.Set<StoredFile>().AsNoTracking().SingleAsync(f => f.Sha256 == hash, cancellation);
        http.Response.Headers.ContentDisposition =
            $"inline; filename=\"{serial.Trim().ToUpperInvariant()}-certificate-{found.Revision}.{extension}\"";
        return TypedResults.Bytes(file.Bytes, mediaType);
    }
}
