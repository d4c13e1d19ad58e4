using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Certificates;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Certificates;

/// <summary>One revision of a unit's birth certificate for programs, byte for byte as it was issued.</summary>
public sealed class ReadCertificate : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/parts/{serial}/certificates/{revision:int}.json", HandleAsync)
            .Produces<CertificateDocument>()
            .Is(Subjects.Certificates, "readCertificate", "The same document for programs.");

    /// <param name="serial" example="US-0034">The unit's serial.</param>
    /// <param name="revision" example="1">The revision's number, from 1.</param>
    public static Task<Results<FileContentHttpResult, Problem>> HandleAsync(
        string serial,
        int revision,
        HttpContext http,
        IssuedCertificates certificates,
        CancellationToken cancellation
    ) => certificates.FileAsync(serial, revision, CertificateForm.Json, http, cancellation);
}
