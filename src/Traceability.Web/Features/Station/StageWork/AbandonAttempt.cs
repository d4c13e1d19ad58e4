using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Station.StageWork;

/// <summary>Abandons the attempt now open; what was fitted in it is free again.</summary>
public sealed class AbandonAttempt(Writes writes, WorkBench bench) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/attempts/{id:guid}/abandon", HandleAsync)
            .For(Role.Builder, Role.Quality)
            .Is(Subjects.Attempts, "abandonAttempt", "Abandon the attempt, with the reason.");

    /// <summary>Why the attempt is abandoned.</summary>
    /// <param name="Reason" example="the fixture slipped">The reason.</param>
    /// <param name="OccurredAt" example="2026-11-25T08:05:00Z">When it happened; now, when it is left out.</param>
    public sealed record Input(string Reason, DateTimeOffset? OccurredAt = null);

    /// <param name="id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The attempt.</param>
    public static Task<Results<Changed<PartAnswer>, Problem>> HandleAsync(
        Guid id,
        Input input,
        SignedIn signedIn,
        AbandonAttempt use,
        Writes writes
    ) => writes.ChangeAsync(cancellation => use.RunAsync(id, input, signedIn.Actor, cancellation));

    public async Task<Answer<PartAnswer>> RunAsync(Guid attemptId, Input input, Actor actor, CancellationToken cancellation)
    {
        if (await bench.ProblemAsync(input.OccurredAt, null, actor, cancellation) is { } problem)
        {
            return problem;
        }

        if (await bench.OpenByAttemptAsync(attemptId, cancellation) is not { } part)
        {
            return Refusal.NotFound(StationSentences.ThereIsNoAttempt(attemptId));
        }

        var stamp = writes.Stamp(actor.PersonId, input.OccurredAt);
        var decision = Attempts.Abandon(part.Dossier, attemptId, input.Reason, stamp);
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        writes.Book.Append(part, "abandon-attempt", decision.Facts);
        await FittedChildren.MarkRemovedAsync(writes.Book, part, decision.Facts.OfType<Removal>(), stamp, cancellation);
        return Answer.Ok(bench.AnswerOf(part.Dossier));
    }
}
