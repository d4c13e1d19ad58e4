using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Certificates;

/// <summary>The latest revision of a unit's birth certificate, byte for byte as it was issued.</summary>
public sealed class ReadLatestCertificatePdf : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/parts/{serial}/certificate.pdf", HandleAsync)
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf")
            .Is(Subjects.Certificates, "readLatestCertificatePdf", "The latest certificate as it was issued.");

    /// <param name="serial" example="US-0034">The unit's serial.</param>
    public static Task<Results<FileContentHttpResult, Problem>> HandleAsync(
        string serial,
        HttpContext http,
        IssuedCertificates certificates,
        CancellationToken cancellation
    ) => certificates.FileAsync(serial, null, CertificateForm.Pdf, http, cancellation);
}
