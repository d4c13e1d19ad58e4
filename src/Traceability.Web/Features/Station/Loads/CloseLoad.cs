using Traceability.Domain.Gates;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Station.Bench;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Station.Loads;

/// <summary>Ends a load: each part that is still in it gets its own verdict. Parts closed or abandoned one by one meanwhile are left alone.</summary>
public sealed class CloseLoad(Writes writes, WorkBench bench, LoadBench loads, EvidenceQuery evidence)
{
    public sealed record Input(string? Note = null, DateTimeOffset? OccurredAt = null);

    public sealed record Output(Guid Id, IReadOnlyList<ClosingAnswer> Results);

    public static Task<IResult> HandleAsync(Guid id, SignedIn signedIn, CloseLoad use, Writes writes, Input? input = null) =>
        writes.RunAsync(cancellation => use.RunAsync(id, input ?? new(), signedIn.Actor, cancellation));

    public async Task<Answer> RunAsync(Guid loadId, Input input, Actor actor, CancellationToken cancellation)
    {
        if (await bench.ProblemAsync(input.OccurredAt, null, actor, cancellation) is { } problem)
        {
            return problem;
        }

        if (await loads.OpenAsync(loadId, cancellation) is not { } load)
        {
            return Refusal.NotFound(StationSentences.ThereIsNoLoad(loadId));
        }

        var open = load.StillOpen.ToList();
        if (open.Count == 0)
        {
            return Refusal.Conflict(StationSentences.LoadIsClosedAlready, RefusalCode.AlreadyDone);
        }

        var stamp = writes.Stamp(actor.PersonId, input.OccurredAt);
        var ending = new List<EndingPart>();
        foreach (var (part, attempt) in open)
        {
            ending.Add(new(part.Dossier, attempt.Id, await evidence.FilesOfAsync(part.Dossier, attempt.Id, cancellation), await bench.EndingAsync(part.Dossier, attempt, stamp.OccurredAt, actor, cancellation)));
        }

        var decision = EndLoad.Decide(ending, input.Note, stamp);
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        var results = new List<ClosingAnswer>();
        foreach (var ((part, attempt), before, ended) in open.Zip(ending, decision.Value!))
        {
            writes.Book.Append(part, "close-attempt", ended.Facts);
            results.Add(ClosingAnswer.Of(ended.Closing, part.Dossier.Route.Find(attempt.Stage)!, part.Dossier, before.Context));
        }

        return Answer.Ok(new Output(loadId, results));
    }
}
