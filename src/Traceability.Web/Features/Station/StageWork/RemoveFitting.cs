using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Parts;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Station.StageWork;

/// <summary>
/// Takes out what is fitted at a position; a part that comes out is free again, and both histories keep that it was there.
/// </summary>
public sealed class RemoveFitting(Writes writes, WorkBench bench, GateContexts contexts) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/parts/{serial}/removals", HandleAsync)
            .For(Role.Builder, Role.Service)
            .Is(Subjects.Attempts, "removeFitting", "Take out what is fitted at a position.");

    /// <summary>What is taken out, and why.</summary>
    /// <param name="Position" example="front-diaphragm">The position.</param>
    /// <param name="Reason" example="scratched in handling">The reason.</param>
    /// <param name="OccurredAt" example="2026-11-25T08:05:00Z">When it happened; now, when it is left out.</param>
    public sealed record Input(string Position, string Reason, DateTimeOffset? OccurredAt = null);

    /// <summary>The removal.</summary>
    /// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c05">The removal's id.</param>
    /// <param name="Position" example="front-diaphragm">The position.</param>
    /// <param name="Part">The part that it was taken out of, as it stands now.</param>
    public sealed record Output(Guid Id, string Position, PartAnswer Part);

    /// <param name="serial" example="US26-00034">The part's serial, or the carrier that it lies in.</param>
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
            return Refusal.NotFound(PartsSentences.ThereIsNoPartOrCarrier(serial));
        }

        var stamp = writes.Stamp(actor.PersonId, input.OccurredAt);
        var decision = Fittings.Remove(part.Dossier, input.Position, input.Reason, contexts.At(stamp.OccurredAt, actor), stamp);
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        writes.Book.Append(part, "remove-fitting", decision.Facts);
        await FittedChildren.MarkRemovedAsync(writes.Book, part, [decision.Value!], stamp, cancellation);
        return Answer.Created(new Output(decision.Value!.Id, input.Position, bench.AnswerOf(part.Dossier)));
    }
}
