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

/// <summary>
/// Takes out what is fitted at a position; a part that comes out is free again, and both histories keep that it was there.
/// </summary>
public sealed class RemoveFitting(Writes writes, WorkBench bench) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/parts/{serial}/removals", HandleAsync)
            .For(Role.Builder, Role.Service)
            .Is(Subjects.Attempts, "removeFitting", "Take out what is fitted at a position.");

    public sealed record Input(string Position, string Reason, DateTimeOffset? OccurredAt = null);

    public sealed record Output(Guid Id, string Position, PartAnswer Part);

    public static Task<Results<Recorded<Output>, Problem>> HandleAsync(
        string serial,
        Input input,
        SignedIn signedIn,
        RemoveFitting use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(serial, input, signedIn.Actor, cancellation));

    public async Task<Answer<Output>> RunAsync(string serial, Input input, Actor actor, CancellationToken cancellation)
    {
        if (await bench.ProblemAsync(input.OccurredAt, null, actor, cancellation) is { } problem)
        {
            return problem;
        }

        if (await bench.OpenAsync(serial, cancellation) is not { } part)
        {
            return Refusal.NotFound(StationSentences.ThereIsNoPartOrCarrier(serial));
        }

        var stamp = writes.Stamp(actor.PersonId, input.OccurredAt);
        var decision = Fittings.Remove(part.Dossier, input.Position, input.Reason, bench.ContextAt(stamp.OccurredAt, actor), stamp);
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        writes.Book.Append(part, "remove-fitting", decision.Facts);
        await ChildrenMove.OutOfAsync(writes.Book, part, [decision.Value!], stamp, cancellation);
        return Answer.Created(new Output(decision.Value!.Id, input.Position, bench.AnswerOf(part.Dossier)));
    }
}
