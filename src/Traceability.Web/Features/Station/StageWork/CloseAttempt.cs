using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;
using Traceability.Persistence.Book;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Setup.Lots;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Station.StageWork;

/// <summary>Closes an attempt: computes, judges, and says what comes next.</summary>
public sealed class CloseAttempt(Writes writes, WorkBench bench, GateContexts contexts, EvidenceQuery evidence, TallySample tally)
    : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/attempts/{id:guid}/close", HandleAsync)
            .For(Role.Builder, Role.Quality)
            .Is(Subjects.Attempts, "closeAttempt", "Close the attempt: compute, judge, say what comes next.");

    /// <summary>What is said at the end.</summary>
    /// <param name="Note" example="cable replaced before the test">A remark that is kept with it.</param>
    /// <param name="OccurredAt" example="2026-11-25T08:05:00Z">When it happened; now, when it is left out.</param>
    public sealed record Input(string? Note = null, DateTimeOffset? OccurredAt = null);

    /// <param name="id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The attempt.</param>
    public static Task<Results<Changed<ClosingAnswer>, Problem>> HandleAsync(
        Guid id,
        SignedIn signedIn,
        CloseAttempt use,
        Writes writes,
        Input? input = null
    ) => writes.ChangeAsync(cancellation => use.RunAsync(id, input ?? new(), signedIn.Actor, cancellation));

    public async Task<Answer<ClosingAnswer>> RunAsync(Guid attemptId, Input input, Actor actor, CancellationToken cancellation)
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
        var attempt = part.Dossier.Attempts.First(a => a.Id == attemptId);
        var files = await evidence.FilesOfAsync(part.Dossier, attemptId, cancellation);
        var context = await contexts.EndingAsync(part.Dossier, attempt, stamp.OccurredAt, actor, cancellation);
        var decision = Attempts.Close(part.Dossier, attemptId, files, input.Note, context, stamp);
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        writes.Book.Append(part, "close-attempt", decision.Facts);
        var stage = part.Dossier.Route.Find(attempt.Stage)!;
        return Answer.Ok(
            ClosingAnswer.Of(
                decision.Value!,
                stage,
                part.Dossier,
                context,
                await tally.SayAsync(part.Dossier, stage, context, cancellation)
            )
        );
    }
}
