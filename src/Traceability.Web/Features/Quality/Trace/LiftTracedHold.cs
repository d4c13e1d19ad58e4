using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Access;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Trace;

/// <summary>Lifts everything that one decision held after a trace, in one transaction, signed with the PIN as the holding was.</summary>
public sealed class LiftTracedHold(TracedHolds traced, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/quality/trace/holds/{id:guid}/release", HandleAsync)
            .For(Role.Quality)
            .Is(
                Subjects.Tracing,
                "releaseTracedHold",
                "Lift all that the decision still holds, signed with the PIN; what was lifted before stays as it is."
            );

    public sealed record Input(string Reason, string Pin);

    /// <summary>What was lifted. <c>LiftedBefore</c> counts what had been lifted one by one; those keep their own reasons.</summary>
    public sealed record Output(
        Guid Id,
        string Held,
        string Reason,
        IReadOnlyList<string> Parts,
        int Lots,
        bool Instrument,
        int LiftedBefore
    );

    public static async Task<Results<Recorded<Output>, Problem>> HandleAsync(
        Guid id,
        Input input,
        SignedIn signedIn,
        LiftTracedHold use,
        PinSignature pins,
        Writes writes,
        CancellationToken cancellation
    ) =>
        await pins.UnprovenAsync(signedIn.Actor, input.Pin, cancellation) is { } refusal
            ? ProblemAnswers.From(refusal)
            : await writes.RecordAsync(inside => use.RunAsync(id, input, signedIn.Actor, inside));

    public async Task<Answer<Output>> RunAsync(Guid id, Input input, Actor actor, CancellationToken cancellation)
    {
        if (await traced.FindAsync(id, cancellation) is not { } found)
        {
            return TracedHolds.Unknown(id);
        }

        // Read again once the parts are locked: what somebody lifts meanwhile is not lifted twice. A lot lifted meanwhile is a lost race
        // and comes again.
        var open = await writes.Book.OpenAsync(found.Open.Select(h => h.PartId).OfType<Guid>(), cancellation);
        var decision = await traced.FindAsync(id, cancellation) ?? found;
        var lifting = HoldsOfTrace.Lift(decision, input.Reason, writes.Stamp(actor.PersonId));
        if (lifting.Refusal is { } refusal)
        {
            return refusal;
        }

        var parts = new List<string>();
        foreach (
            var (hold, release) in lifting
                .Value!.Zip(lifting.Facts.Cast<HoldRelease>())
                .OrderBy(l => l.First.PartId is null)
                .ThenBy(l => l.First.SubjectId)
        )
        {
            if (hold.PartId is { } partId)
            {
                writes.Book.Append(open[partId], "lift-hold", release);
                parts.Add(open[partId].Dossier.Part.Serial);
            }
            else
            {
                await writes.Book.AppendAsync(hold.SubjectId, "lift-hold", [release], cancellation);
            }
        }

        return Answer.Created(
            new Output(
                decision.Id,
                decision.Reason,
                input.Reason.Trim(),
                parts,
                lifting.Value!.Count(h => h.LotId is not null),
                lifting.Value!.Any(h => h.InstrumentId is not null),
                decision.Lifted.Count
            )
        );
    }
}
