using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Certificates;

/// <summary>The revisions of a unit's birth certificate.</summary>
public sealed class ListCertificates : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/parts/{serial}/certificates", HandleAsync)
            .Is(Subjects.Certificates, "listCertificates", "The revisions of a unit's birth certificate.");

    /// <param name="serial" example="US-0034">The unit's serial.</param>
    public static async Task<Results<JsonOrCsv<Page<IssuedCertificate>>, Problem>> HandleAsync(
        string serial,
        HttpContext http,
        PageRequest page,
        IssuedCertificates certificates,
        CancellationToken cancellation
    ) =>
        await certificates.OfAsync(serial, cancellation) is { } all
            ? JsonOrCsv.Of(page.Part(all, c => c.PdfSha256))
            : ProblemAnswers.From(Refusal.NotFound(QualitySentences.ThereIsNoPart(serial)));
}
