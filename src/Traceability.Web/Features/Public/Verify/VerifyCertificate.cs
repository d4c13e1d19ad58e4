using Microsoft.AspNetCore.Http.HttpResults;
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

/// <summary>Answers whether a certificate is genuine and current; for the API and for the page.</summary>
public sealed class VerifyCertificate(WorkshopContext db, DossierReader dossiers, InsideQuery inside) : IUseCase
{
    private const string ById = "/verify/{certificateId}";

    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet(ById, HandleAsync)
            .AllowAnonymous()
            .Is(Subjects.Certificates, "verifyCertificate", "Is this certificate genuine and current?");

    /// <summary>The address that is printed on certificates: a page for people, the same answer as above for programs.</summary>
    public static void MapPrinted(IEndpointRouteBuilder app) => JsonOnly.On(app.MapGet(ById, HandleAsync).ExcludeFromDescription());

    private static string UnknownId => PublicSentences.NoCertificateWithThisIdWasIssued;

    /// <param name="certificateId" example="7KQ2-M4XA-9PLT">The id that is printed on the certificate, with or without hyphens.</param>
    public static async Task<Results<Ok<Verified>, Problem>> HandleAsync(
        string certificateId,
        VerifyCertificate use,
        CancellationToken cancellation
    ) =>
        await use.ByIdAsync(certificateId, cancellation) is { Genuine: true } verified
            ? TypedResults.Ok(verified)
            : ProblemAnswers.From(Refusal.NotFound(UnknownId));

    /// <summary>By the id that is printed on it.</summary>
    public async Task<Verified> ByIdAsync(string certificateId, CancellationToken cancellation)
    {
        var id = CertificateNumber.In(certificateId) ?? certificateId.Trim().ToUpperInvariant();
        return await db.Set<Certificate>().AsNoTracking().FirstOrDefaultAsync(c => c.PublicId == id, cancellation) is { } certificate
            ? await AboutAsync(certificate, null, cancellation)
            : new(false, false, null, UnknownId);
    }

    /// <summary>What can be said about a certificate that was issued here.</summary>
    internal async Task<Verified> AboutAsync(Certificate certificate, bool? unaltered, CancellationToken cancellation)
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
}
