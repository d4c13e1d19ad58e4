using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Parts.Overview;

/// <summary>A part as it stands.</summary>
public sealed class ReadPart : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/parts/{serial}", HandleAsync)
            .Is(Subjects.Parts, "readPart", "A part as it stands; a carrier stands for the part in it.");

    /// <param name="serial" example="US26-00034">The part's serial, or the carrier that it lies in.</param>
    public static async Task<Results<Ok<PartAnswer>, Problem>> HandleAsync(
        string serial,
        DossierReader dossiers,
        WorkBench bench,
        CancellationToken cancellation
    ) =>
        await PartLookup.FindAsync(serial, dossiers, cancellation) is { } part
            ? TypedResults.Ok(bench.AnswerOf(part))
            : PartLookup.Unknown(serial);
}
