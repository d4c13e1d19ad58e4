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
public sealed class ReleaseTracedHold(TracedHoldReader holds, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/quality/trace/holds/{id:guid}/release", HandleAsync)
            .For(Role.Quality)
            .Is(
                Subjects.Tracing,
                "releaseTracedHold",
                "Lift all that the decision still holds, signed with the PIN; what was lifted before stays as it is."
            );

    /// <summary>Why everything that the decision held is released, signed with the PIN.</summary>
    /// <param name="Reason" example="seen under the lens: none">Why it may be used again.</param>
    /// <param name="Pin" example="162738">The PIN of whoever signs.</param>
    public sealed record Input(string Reason, string Pin);

    /// <summary>What was released.</summary>
    /// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The decision's id.</param>
    /// <param name="Held" example="pinholes (trace of lot F-2603)">Why it had been held.</param>
    /// <param name="Reason" example="seen under the lens: none">Why it was released.</param>
    /// <param name="Parts">Serials of the parts released.</param>
    /// <param name="Lots" example="1">How many lots were released.</param>
    /// <param name="Instrument" example="false">True when an instrument was released.</param>
    /// <param name="LiftedBefore" example="0">Holds that had been released one by one; those keep their own reasons.</param>
    public sealed record Output(
        Guid Id,
        string Held,
        string Reason,
        IReadOnlyList<string> Parts,
        int Lots,
        bool Instrument,
        int LiftedBefore
    );

    /// <param name="id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The id of any of its holds.</param>
    public static async Task<Results<Recorded<Output>, Problem>> HandleAsync(
        Guid id,
        Input input,
        SignedIn signedIn,
        ReleaseTracedHold use,
        PinSignature pins,
        Writes writes,
        CancellationToken cancellation
    ) =>
        await pins.UnprovenAsync(signedIn.Actor, input.Pin, cancellation) is { } refusal
            ? ProblemAnswers.From(refusal)
            : await writes.RecordAsync(inside => use.RunAsync(id, input, signedIn.Actor, inside));

    public async Task<Answer<Output>> RunAsync(Guid id, Input input, Actor actor, CancellationToken cancellation)
    {
        if (await holds.FindAsync(id, cancellation) is not { } found)
        {
            return TracedHoldReader.Unknown(id);
        }

        // Read again once the parts are locked: what somebody lifts meanwhile is not lifted twice. A lot lifted meanwhile is a lost race
        // and comes again.
        var open = await writes.Book.OpenAsync(found.Open.Select(h => h.PartId).OfType<Guid>(), cancellation);
        var decision = await holds.FindAsync(id, cancellation) ?? found;
        var lifting = HoldsOfTrace.Lift(decision, input.Reason, writes.Stamp(actor.PersonId));
        if (lifting.Refusal is { } refusal)
        {
            return refusal;
        }

        var parts = new List<string>();
        var others = new List<(Guid SubjectId, Fact Fact)>();
        foreach (var (hold, release) in lifting.Value!.Zip(lifting.Facts.Cast<HoldRelease>()).OrderBy(l => l.First.SubjectId))
        {
            if (hold.PartId is { } partId)
            {
                writes.Book.Append(open[partId], "lift-hold", release);
                parts.Add(open[partId].Dossier.Part.Serial);
            }
            else
            {
                others.Add((hold.SubjectId, release));
            }
        }

        if (others.Count > 0)
        {
            await writes.Book.AppendAsync("lift-hold", others, cancellation);
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
