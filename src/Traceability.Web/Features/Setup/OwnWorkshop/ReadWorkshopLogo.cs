using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Work;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.OwnWorkshop;

/// <summary>The logo, byte for byte as it was given.</summary>
public sealed class ReadWorkshopLogo(WorkshopQuery query) : IUseCase
{
    /// <summary>A picture is looked at and does nothing: what is refused at the door already is refused to it once more.</summary>
    private const string Policy = "default-src 'none'; style-src 'unsafe-inline'; sandbox";

    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/workshop/logo", HandleAsync)
            .Produces(StatusCodes.Status200OK, contentType: "image/svg+xml", additionalContentTypes: "image/png")
            .Is(Subjects.Workshop, "readWorkshopLogo", "The logo as it was given.");

    public static async Task<Results<FileContentHttpResult, Problem>> HandleAsync(
        HttpContext http,
        ReadWorkshopLogo use,
        CancellationToken cancellation
    )
    {
        var latest = await use.LatestAsync(cancellation);
        if (latest?.LogoType is not { } type)
        {
            return ProblemAnswers.From(Refusal.NotFound(SetupSentences.WorkshopHasNoLogo));
        }

        http.Response.Headers.ContentSecurityPolicy = Policy;
        return TypedResults.Bytes((await use.BytesAsync(latest, cancellation))!, type);
    }

    public Task<Domain.Records.WorkshopRevision?> LatestAsync(CancellationToken cancellation) => query.LatestAsync(cancellation);

    public Task<byte[]?> BytesAsync(Domain.Records.WorkshopRevision revision, CancellationToken cancellation) =>
        query.LogoAsync(revision, cancellation);
}
