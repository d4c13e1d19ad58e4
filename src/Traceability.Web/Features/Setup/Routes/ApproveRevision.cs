using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes.Files;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Access;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>Somebody who did not write a proposed revision approves it and signs with the PIN; new parts take it from its day on.</summary>
public sealed class ApproveRevision(
    WorkshopContext db,
    RouteProposals proposals,
    WorkshopCalendar calendar,
    Writes writes,
    KnownKindsQuery kinds
) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/routes/{model}/{kind}/{revision:int}/approval", HandleAsync)
            .For(Role.Lead, Role.Quality)
            .Is(Subjects.Routes, "approveRevision", "Approve a proposed revision, not by its author; signed with the PIN.");

    /// <summary>The approval of a proposed revision.</summary>
    /// <param name="Reason" example="limits as agreed">Why it may come into force.</param>
    /// <param name="Pin" example="3333">The own PIN, which signs it.</param>
    /// <param name="AloneBecause" example="I work alone this month">
    /// Why one person does what two should; needed where the workshop works single-handed and the same person wrote the revision.
    /// </param>
    public sealed record Input(string Reason, string Pin, string? AloneBecause = null);

    /// <summary>A revision that was approved.</summary>
    /// <param name="Model" example="TARN-2">The model of its parts.</param>
    /// <param name="Kind" example="capsule">The kind of its parts.</param>
    /// <param name="Revision" example="3">Its number.</param>
    /// <param name="ApprovedBy" example="QUAL1">Badge of who approved it.</param>
    /// <param name="EffectiveFrom" example="2026-02-01">The first day on which new parts take it.</param>
    /// <param name="Reason" example="limits as agreed">Why.</param>
    public sealed record Output(string Model, string Kind, int Revision, string ApprovedBy, DateOnly EffectiveFrom, string Reason);

    /// <param name="model" example="TARN-2">The model of its parts.</param>
    /// <param name="kind" example="capsule">The kind of its parts.</param>
    /// <param name="revision" example="3">Its number.</param>
    public static async Task<Results<Recorded<Output>, Problem>> HandleAsync(
        string model,
        string kind,
        int revision,
        Input input,
        SignedIn signedIn,
        ApproveRevision use,
        PinSignature pins,
        Writes writes,
        CancellationToken cancellation
    ) =>
        await pins.UnprovenAsync(signedIn.Actor, input.Pin, cancellation) is { } refusal
            ? ProblemAnswers.From(refusal)
            : await writes.RecordAsync(inside =>
                use.RunAsync(model, kind, revision, input.Reason, signedIn.Actor.Alone(input.AloneBecause), inside)
            );

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

        var latest =
            await db.Set<RouteRevision>()
                .Where(r =>
                    r.Model == model && r.Kind == kind && (r.ApprovedBy != "" || db.Set<RouteApproval>().Any(a => a.RouteId == r.Id))
                )
                .MaxAsync(r => (int?)r.Revision, cancellation)
            ?? 0;
        var decision = RouteApprovals.Approve(
            proposal,
            already,
            ended,
            latest,
            actor,
            reason,
            calendar.DayOf(writes.Now),
            writes.Stamp(actor.PersonId)
        );
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        if (LoadRoute.UnknownKinds(await kinds.WarningsOfAsync(RouteText.ReadKept(proposal.Text).Named, cancellation)) is { } unknown)
        {
            return unknown;
        }

        await writes.Book.AppendAsync(proposal.Id, "approve-route", decision.Facts, cancellation);
        return Answer.Created(new Output(model, kind, revision, actor.Badge, decision.Value!.EffectiveFrom, decision.Value.Reason));
    }
}
