using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Book;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>Somebody who did not write a proposed revision rejects it; it will never be in force.</summary>
public sealed class RejectRevision(RouteProposals proposals, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/routes/{model}/{kind}/{revision:int}/rejection", HandleAsync)
            .For(Role.Lead, Role.Quality)
            .Is(Subjects.Routes, "rejectRevision", "Reject a proposed revision, not by its author.");

    /// <summary>Why a proposed revision is not to be used.</summary>
    /// <param name="Reason" example="limit too wide">Why not.</param>
    public sealed record Input(string Reason);

    /// <summary>A proposal that came to nothing.</summary>
    /// <param name="Model" example="TARN-2">The model of its parts.</param>
    /// <param name="Kind" example="capsule">The kind of its parts.</param>
    /// <param name="Revision" example="3">Its number.</param>
    /// <param name="State" example="rejected">Where it stands.</param>
    /// <param name="By" example="QUAL1">Badge of who decided.</param>
    /// <param name="Reason" example="limit too wide">Why.</param>
    public sealed record Output(
        string Model,
        string Kind,
        int Revision,
        [property: OneOf("RevisionState", "proposed", "waiting", "current", "superseded", "rejected", "withdrawn")] string State,
        string By,
        string Reason
    );

    /// <param name="model" example="TARN-2">The model of its parts.</param>
    /// <param name="kind" example="capsule">The kind of its parts.</param>
    /// <param name="revision" example="3">Its number.</param>
    public static async Task<Results<Recorded<Output>, Problem>> HandleAsync(
        string model,
        string kind,
        int revision,
        Input input,
        SignedIn signedIn,
        RejectRevision use,
        Writes writes,
        CancellationToken cancellation
    ) => await writes.RecordAsync(inside => use.RunAsync(model, kind, revision, input.Reason, signedIn.Actor, inside));

    public async Task<Answer<Output>> RunAsync(
        string model,
        string kind,
        int revision,
        string reason,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (await proposals.LockAsync(model, kind, revision, cancellation) is not var (proposal, already, ended))
        {
            return Refusal.NotFound(SetupSentences.ThereIsNoRevision(revision, kind, model));
        }

        var decision = RouteApprovals.Reject(proposal, already, ended, actor, reason, writes.Stamp(actor.PersonId));
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        await writes.Book.AppendAsync(proposal.Id, "reject-route", decision.Facts, cancellation);
        return Answer.Created(new Output(model, kind, revision, "rejected", actor.Badge, decision.Value!.Reason));
    }
}
