using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Work;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Lots;

/// <summary>A lot as it stands.</summary>
public sealed class ReadLot : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/lots/{number}", HandleAsync).Is(Subjects.Lots, "readLot", "A lot as it stands.");

    /// <param name="number" example="FILM-0007">The lot's number.</param>
    public static async Task<Results<Ok<LotAnswer>, Problem>> HandleAsync(
        string number,
        LotQuery lots,
        TallySample tally,
        CancellationToken cancellation
    ) =>
        await lots.FindAsync([number.Trim().ToUpperInvariant()], cancellation) is [var lot]
            ? TypedResults.Ok(LotAnswer.Of(lot) with { Sample = TallySample.Output.Of(await tally.RunAsync(lot.Lot, null, cancellation)) })
            : ProblemAnswers.From(Refusal.NotFound(SetupSentences.ThereIsNoLot(number)));
}
