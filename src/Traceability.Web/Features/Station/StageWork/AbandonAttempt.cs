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

/// <summary>Gives up the attempt now open; what was fitted in it is free again.</summary>
public sealed class AbandonAttempt(Writes writes, WorkBench bench) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/attempts/{id:guid}/abandon", HandleAsync)
            .For(Role.Builder, Role.Quality)
            .Is(Subjects.Attempts, "abandonAttempt", "Give the attempt up, with the reason.");

    public sealed record Input(string Reason, DateTimeOffset? OccurredAt = null);

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
        await ChildrenMove.OutOfAsync(writes.Book, part, decision.Facts.OfType<Removal>(), stamp, cancellation);
        return Answer.Ok(bench.AnswerOf(part.Dossier));
    }
}
