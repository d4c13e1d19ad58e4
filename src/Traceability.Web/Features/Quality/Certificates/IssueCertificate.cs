using System.Security.Cryptography;
using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Documents.Certificates;
using Traceability.Domain.Certificates;
using Traceability.Domain.Codes;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Domain.Work.Delivery;
using Traceability.Persistence.Book;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Certificates;

/// <summary>
/// Issues a revision of a unit's birth certificate: the document is made from the facts, drawn once, and both are kept byte for byte;
/// what is handed out later is what was issued.
/// </summary>
public sealed class IssueCertificate(
    Writes writes,
    WorkBench bench,
    CertificateSources sources,
    VerificationAddress address,
    WorkshopNotice notice,
    WorkshopQuery query
) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/parts/{serial}/certificates", HandleAsync)
            .For(Role.Quality)
            .Is(Subjects.Certificates, "issueCertificate", "Issue a revision; refused with what is missing.");

    private const string InventedData = "Invented data of a demonstration: this unit, these people and these numbers do not exist.";

    /// <summary>When it is issued.</summary>
    /// <param name="OccurredAt" example="2026-11-25T14:20:00Z">When it happened; now, when it is left out.</param>
    public sealed record Input(DateTimeOffset? OccurredAt = null);

    /// <summary>The revision that was issued.</summary>
    /// <param name="CertificateId" example="7QK4M2XT9B">What it is verified by.</param>
    /// <param name="Serial" example="US-0034">The unit's serial.</param>
    /// <param name="Revision" example="1">Its number, from 1.</param>
    /// <param name="IssuedAt" example="2026-11-25T14:20:00Z">When it was issued.</param>
    /// <param name="VerifyAddress" example="https://workshop.example/verify/7QK4M2XT9B">Where anybody can check that it is genuine.</param>
    /// <param name="PdfSha256" example="9f2c5a7d0b1e4c3a8d6f2b7e9a1c4d5e6f708192a3b4c5d6e7f8091a2b3c4d5e">
    /// SHA-256 of the PDF, in hexadecimal.
    /// </param>
    /// <param name="DocumentSha256" example="1a4d7f0c3b6e9a2d5c8f1b4e7a0d3c6f9b2e5a8d1c4f7b0e3a6d9c2f5b8e1a4d">
    /// SHA-256 of the document for programs, in hexadecimal.
    /// </param>
    public sealed record Output(
        string CertificateId,
        string Serial,
        int Revision,
        DateTimeOffset IssuedAt,
        string VerifyAddress,
        string PdfSha256,
        string DocumentSha256
    );

    /// <param name="serial" example="US-0034">The unit's serial, or the carrier that it lies in.</param>
    public static Task<Results<Recorded<Output>, Problem>> HandleAsync(
        string serial,
        SignedIn signedIn,
        IssueCertificate use,
        Writes writes,
        Input? input = null
    ) => writes.RecordAsync(cancellation => use.RunAsync(serial, input ?? new(), signedIn.Actor, cancellation));

    public async Task<Answer<Output>> RunAsync(string serial, Input input, Actor actor, CancellationToken cancellation)
    {
        if (await bench.ProblemAsync(input.OccurredAt, null, actor, cancellation) is { } problem)
        {
            return problem;
        }

        if (await bench.OpenAsync(serial, cancellation) is not { } part)
        {
            return Refusal.NotFound(QualitySentences.ThereIsNoPartOrCarrier(serial));
        }

        var unit = part.Dossier;
        var missing = ReleaseUnit.MissingForCertificate(unit);
        if (missing.Count > 0)
        {
            return new Refusal(
                RefusalKind.Conflict,
                QualitySentences.CannotHaveABirthCertificate(unit.Part.Serial, string.Join("; ", missing.Select(m => m.Because))),
                missing,
                new Dictionary<string, string[]>()
            );
        }

        var workshop = await notice.ReadNowAsync(cancellation);
        if (VerificationAddress.Problem(workshop) is { } noAddress)
        {
            return noAddress;
        }

        var stamp = writes.Stamp(actor.PersonId, input.OccurredAt);
        var document = CertificateBuilder.Build(await sources.OfAsync(unit, cancellation), IssueOf(unit, stamp.OccurredAt, workshop));
        var json = CertificateJson.Write(document);
        var pdf = CertificatePdf.Render(document, await query.LogoAsync(workshop.Revision, cancellation));
        var certificate = new Certificate(
            stamp.NewId(),
            unit.Part.Id,
            document.Revision,
            document.CertificateId,
            await KeepAsync(json, cancellation),
            await KeepAsync(pdf, cancellation),
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
        writes.Book.Append(part, "issue-certificate", certificate);
        return Answer.Created(
            new Output(
                document.CertificateId,
                unit.Part.Serial,
                document.Revision,
                certificate.OccurredAt,
                document.VerifyAddress,
                certificate.PdfSha256,
                certificate.DocumentSha256
            )
        );
    }

    private CertificateIssue IssueOf(Dossier unit, DateTimeOffset at, WorkshopFacts workshop)
    {
        var id = RandomNumberGenerator.GetString(CertificateNumber.Characters, CertificateNumber.Length);
        var latest = unit.Of<Certificate>().LastOrDefault();
        return new(
            id,
            (latest?.Revision ?? 0) + 1,
            latest?.PublicId,
            at,
            address.Of(id, workshop),
            CertifiedOf(workshop),
            workshop.Demo ? InventedData : null,
            workshop.Calendar
        );
    }

    private static WorkshopOnCertificate CertifiedOf(WorkshopFacts workshop)
    {
        var r = workshop.Revision;
        return new(workshop.Workshop ?? "", workshop.TimeZone)
        {
            Revision = r?.Revision,
            Address = r?.Address,
            Contact = r?.Contact,
            WarrantyTerms = r?.WarrantyTerms,
            DayStyle = r?.DayStyle ?? DayStyle.DayMonthYear,
            LogoSha256 = r?.LogoSha256,
            Shown = r is null ? ShownSections.None : new(r.ShowsSuppliers, r.ShowsLotNumbers, r.ShowsReworks),
            Names = r?.Names ?? NamesOnCertificates.Full,
        };
    }

    private async Task<string> KeepAsync(byte[] bytes, CancellationToken cancellation)
    {
        var hash = Convert.ToHexStringLower(SHA256.HashData(bytes));
        await writes.Book.KeepFileAsync(hash, bytes, cancellation);
        return hash;
    }
}
