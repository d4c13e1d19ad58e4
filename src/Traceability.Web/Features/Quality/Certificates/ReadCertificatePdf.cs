using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Certificates;

/// <summary>One revision of a unit's birth certificate, byte for byte as it was issued.</summary>
public sealed class ReadCertificatePdf : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/parts/{serial}/certificates/{revision:int}.pdf", HandleAsync)
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf")
            .Is(Subjects.Certificates, "readCertificatePdf", "One revision as it was issued.");

    /// <param name="serial" example="US-0034">The unit's serial.</param>
    /// <param name="revision" example="1">The revision's number, from 1.</param>
    public static Task<Results<FileContentHttpResult, Problem>> HandleAsync(
        string serial,
        int revision,
        HttpContext http,
        IssuedCertificates certificates,
        CancellationToken cancellation
    ) => certificates.FileAsync(serial, revision, CertificateForm.Pdf, http, cancellation);
}
