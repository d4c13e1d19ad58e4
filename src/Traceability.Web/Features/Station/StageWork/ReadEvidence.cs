using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Station.StageWork;

/// <summary>The bytes of a file, as they were sent.</summary>
public sealed class ReadEvidence : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/attempts/{id:guid}/evidence/{evidenceId:guid}", HandleAsync)
            .Produces(StatusCodes.Status200OK, contentType: "text/csv", additionalContentTypes: ["audio/wav", "image/jpeg", "image/png"])
            .Is(Subjects.Attempts, "readEvidence", "A file as it was sent.");

    /// <param name="id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The attempt.</param>
    /// <param name="evidenceId" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c0e">The file, of the attempt itself or of its load.</param>
    public static async Task<Results<FileContentHttpResult, Problem>> HandleAsync(
        Guid id,
        Guid evidenceId,
        WorkshopContext db,
        CancellationToken cancellation
    )
    {
        var found = await (
            from e in db.Set<EvidenceRecord>()
            join f in db.Set<StoredFile>() on e.Sha256 equals f.Sha256
            where
                e.Id == evidenceId
                && (e.AttemptId == id || db.Set<Attempt>().Any(a => a.Id == id && a.LoadId != null && a.LoadId == e.LoadId))
            select new
            {
                e.Name,
                e.MediaType,
                f.Bytes,
            }
        )
            .AsNoTracking()
            .FirstOrDefaultAsync(cancellation);
        return found is null
            ? ProblemAnswers.From(Refusal.NotFound(StationSentences.AttemptHasNoFile(id, evidenceId)))
            : TypedResults.File(found.Bytes, found.MediaType, found.Name + Extension(found.MediaType));
    }

    private static string Extension(string mediaType) =>
        mediaType switch
        {
            "text/csv" => ".csv",
            "image/jpeg" => ".jpg",
            "image/png" => ".png",
            _ => ".wav",
        };
}
