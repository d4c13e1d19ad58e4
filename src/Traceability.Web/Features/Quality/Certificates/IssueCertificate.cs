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
    VerifyAddress address,
    WorkshopNotice notice,
    WorkshopCalendar calendar
) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/parts/{serial}/certificates", HandleAsync)
            .For(Role.Quality)
            .Is(Subjects.Certificates, "issueCertificate", "Issue a revision; refused with what is missing.");

    private const string InventedData = "Invented data of a demonstration: this unit, these people and these numbers do not exist.";

    public sealed record Input(DateTimeOffset? OccurredAt = null);

    public sealed record Output(
        string CertificateId,
        string Serial,
        int Revision,
        DateTimeOffset IssuedAt,
        string VerifyAddress,
        string PdfSha256,
        string DocumentSha256
    );

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

        var workshop = await notice.ReadAsync(cancellation);
        if (address.Problem(workshop) is { } noAddress)
        {
            return noAddress;
        }

        var stamp = writes.Stamp(actor.PersonId, input.OccurredAt);
        var document = CertificateBuilder.Build(await sources.OfAsync(unit, cancellation), IssueOf(unit, stamp.OccurredAt, workshop));
        var json = CertificateJson.Write(document);
        var pdf = CertificatePdf.Render(document);
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
            address.Of(id),
            workshop.Workshop ?? "",
            workshop.Demo ? InventedData : null,
            calendar
        );
    }

    private async Task<string> KeepAsync(byte[] bytes, CancellationToken cancellation)
    {
        var hash = Convert.ToHexStringLower(SHA256.HashData(bytes));
        await writes.Book.KeepFileAsync(hash, bytes, cancellation);
        return hash;
    }
}
