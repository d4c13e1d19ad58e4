using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Station.Bench;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Station.AbandonAttempt;

/// <summary>Gives up the attempt now open; what was fitted in it is free again.</summary>
public sealed class GiveUpStage(Writes writes, WorkBench bench)
{
    public sealed record Input(string Reason, DateTimeOffset? OccurredAt = null);

    public static Task<IResult> HandleAsync(Guid id, Input input, SignedIn signedIn, GiveUpStage use, Writes writes) =>
        writes.RunAsync(cancellation => use.RunAsync(id, input, signedIn.Actor, cancellation));

    public async Task<Answer> RunAsync(Guid attemptId, Input input, Actor actor, CancellationToken cancellation)
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
