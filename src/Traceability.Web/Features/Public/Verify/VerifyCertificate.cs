using System.Security.Cryptography;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Codes;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.Delivery;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Public.Verify;

/// <summary>
/// What can be said about a certificate to anybody: was it issued here, is it the latest word on its unit, and, of a file, is it the one
/// that was issued. Nothing private: no customer, no person, no values.
/// </summary>
public sealed record Verified(
    bool Genuine,
    bool Current,
    bool? Unaltered,
    string Words,
    string? CertificateId = null,
    string? Serial = null,
    string? Model = null,
    int? Revision = null,
    int? LatestRevision = null,
    DateTimeOffset? IssuedAt = null,
    string? PdfSha256 = null
);

/// <summary>Answers whether a certificate is genuine, current and unaltered; for the API and for the page.</summary>
public sealed class VerifyCertificate(WorkshopContext db, DossierReader dossiers, InsideQuery inside) : IUseCase
{
    private const string ById = "/verify/{certificateId}";

    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet(ById, HandleAsync)
            .AllowAnonymous()
            .Is(Subjects.Certificates, "verifyCertificate", "Is this certificate genuine and current?");
        api.MapPost("/verify", HandleFileAsync)
            .AllowAnonymous()
            .WithMetadata(new AcceptsMetadata(["application/pdf"], typeof(Stream)), new OpenBodyAttribute(MaxBytes))
            .Is(Subjects.Certificates, "verifyFile", "Is this PDF, byte for byte, a certificate issued here?");
    }

    /// <summary>The address that is printed on certificates: a page for people, the same answer as above for programs.</summary>
    public static void MapPrinted(IEndpointRouteBuilder app) => ForPrograms.On(app.MapGet(ById, HandleAsync).ExcludeFromDescription());

    /// <summary>No certificate drawn here comes near this size.</summary>
    public const int MaxBytes = 20 * 1024 * 1024;

    private static string UnknownId => PublicSentences.NoCertificateWithThisIdWasIssued;
    private static string UnknownFile => PublicSentences.ThisFileIsNotByteForByte;

    public static async Task<Results<Ok<Verified>, Problem>> HandleAsync(
        string certificateId,
        VerifyCertificate use,
        CancellationToken cancellation
    ) =>
        await use.ByIdAsync(certificateId, cancellation) is { Genuine: true } verified
            ? TypedResults.Ok(verified)
            : ProblemAnswers.From(Refusal.NotFound(UnknownId));

    public static async Task<Ok<Verified>> HandleFileAsync(HttpRequest request, VerifyCertificate use, CancellationToken cancellation)
    {
        if (request.ContentLength > MaxBytes)
        {
            throw new BadHttpRequestException($"a certificate has at most {MaxBytes} bytes", 413);
        }

        return TypedResults.Ok(await use.ByFileAsync(request.Body, cancellation));
    }

    /// <summary>By the id that is printed on it.</summary>
    public async Task<Verified> ByIdAsync(string certificateId, CancellationToken cancellation)
    {
        var id = CertificateNumber.In(certificateId) ?? certificateId.Trim().ToUpperInvariant();
        return await db.Set<Certificate>().AsNoTracking().FirstOrDefaultAsync(c => c.PublicId == id, cancellation) is { } certificate
            ? await AboutAsync(certificate, null, cancellation)
            : new(false, false, null, UnknownId);
    }

    /// <summary>By the file itself.</summary>
    public async Task<Verified> ByFileAsync(Stream pdf, CancellationToken cancellation)
    {
        var hash = await HashAsync(pdf, cancellation);
        return await db.Set<Certificate>().AsNoTracking().FirstOrDefaultAsync(c => c.PdfSha256 == hash, cancellation) is { } certificate
            ? await AboutAsync(certificate, true, cancellation)
            : new(false, false, false, UnknownFile);
    }

    private async Task<Verified> AboutAsync(Certificate certificate, bool? unaltered, CancellationToken cancellation)
    {
        var unit = (await dossiers.LoadAsync(certificate.PartId, cancellation))!;
        var latest = unit.Of<Certificate>().Last();
        var currency = ReleaseUnit.CurrencyOf(unit, certificate, await inside.LastWorkAsync(unit.Part.Id, cancellation));
        var words = currency switch
        {
            CertificateCurrency.Current => PublicSentences.GenuineAndCurrent,
            CertificateCurrency.Replaced => PublicSentences.GenuineButReplaced(latest.Revision),
            CertificateCurrency.Scrapped => PublicSentences.GenuineButOutOfUse,
            CertificateCurrency.CameBack => PublicSentences.GenuineButBack,
            _ => PublicSentences.GenuineButWorkedOn,
        };
        return new(
            true,
            currency == CertificateCurrency.Current,
            unaltered,
            words,
            certificate.PublicId,
            unit.Part.Serial,
            unit.Part.Model,
            certificate.Revision,
            latest.Revision,
            certificate.OccurredAt,
            certificate.PdfSha256
        );
    }

    private static async Task<string> HashAsync(Stream pdf, CancellationToken cancellation)
    {
        using var sha = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var buffer = new byte[64 * 1024];
        var total = 0;
        for (int read; (read = await pdf.ReadAsync(buffer, cancellation)) > 0; )
        {
            total += read;
            if (total > MaxBytes)
            {
                throw new BadHttpRequestException($"a certificate has at most {MaxBytes} bytes", 413);
            }

            sha.AppendData(buffer, 0, read);
        }

        return Convert.ToHexStringLower(sha.GetHashAndReset());
    }
}
