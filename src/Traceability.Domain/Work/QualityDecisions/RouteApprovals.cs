using Traceability.Domain.Gates;
using Traceability.Domain.Records;

namespace Traceability.Domain.Work.QualityDecisions;

/// <summary>
/// Somebody else than its author approves a proposed revision of a route; from then on new parts take it. Where the workshop works
/// single-handed the author may, signed in a second time.
/// </summary>
public static class RouteApprovals
{
    /// <summary>
    /// Leads to the approval. It is in force from the day that the file names, or from today when that day has come already. The first
    /// revision of a model and kind takes nothing's place and counts from the day of its file: parts of that time, entered later from
    /// paper, are built by it.
    /// </summary>
    /// <param name="revision">The revision.</param>
    /// <param name="already">Its approval, when it has one.</param>
    /// <param name="ended">Its rejection or withdrawal, when it has one.</param>
    /// <param name="latestApproved">The highest approved revision of the same model and kind; 0 when there is none.</param>
    /// <param name="actor">Who approves.</param>
    /// <param name="reason">Why it may be used.</param>
    /// <param name="today">The workshop's day.</param>
    /// <param name="stamp">Who and when.</param>
    public static Decision<RouteApproval> Approve(
        RouteRevision revision,
        RouteApproval? already,
        RouteEnding? ended,
        int latestApproved,
        Actor actor,
        string reason,
        DateOnly today,
        Stamp stamp
    )
    {
        var name = RefusalTexts.RevisionOf(revision.Revision, revision.Model, revision.Kind);
        var need = SecondPerson.Of(actor, string.Equals(actor.Badge, revision.Author, StringComparison.OrdinalIgnoreCase));
        Refusal? problem =
            Decided(revision, already, ended) is { } decided ? decided
            : AloneRefusals.Of(need, () => RefusalTexts.SomebodyElseMustApprove(actor.Name, name)) is { } alone ? alone
            : latestApproved > revision.Revision
                ? Refusal.Conflict(RefusalTexts.ComesBeforeAnApprovedRevision(name, latestApproved), RefusalCode.RevisionOutOfOrder)
            : string.IsNullOrWhiteSpace(reason) ? Refusal.Invalid("reason", RefusalTexts.SayWhyTheRouteMayBeUsed)
            : null;
        if (problem is not null)
        {
            return problem;
        }

        var approval = new RouteApproval(
            stamp.NewId(),
            revision.Id,
            latestApproved == 0 || revision.EffectiveFrom > today ? revision.EffectiveFrom : today,
            reason.Trim(),
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
        return need == SecondPersonNeed.Alone
            ? Decision.Accept(approval, approval, SecondPerson.SignedBy(actor, SecondPerson.OfApproval, null, revision.Id, null, stamp))
            : Decision.Accept(approval, approval);
    }

    /// <summary>Leads to the rejection of a proposal by somebody else than its author; it will never be in force.</summary>
    /// <param name="revision">The revision.</param>
    /// <param name="already">Its approval, when it has one.</param>
    /// <param name="ended">Its rejection or withdrawal, when it has one.</param>
    /// <param name="actor">Who rejects.</param>
    /// <param name="reason">Why.</param>
    /// <param name="stamp">Who and when.</param>
    public static Decision<RouteEnding> Reject(
        RouteRevision revision,
        RouteApproval? already,
        RouteEnding? ended,
        Actor actor,
        string reason,
        Stamp stamp
    ) =>
        End(
            RouteEndingKind.Rejected,
            revision,
            reason,
            stamp,
            Decided(revision, already, ended)
                ?? (
                    IsAuthor(revision, actor)
                        ? Refusal.Conflict(RefusalTexts.AuthorWithdraws(actor.Name, NameOf(revision)), RefusalCode.SecondPersonNeeded)
                        : null
                )
        );

    /// <summary>Leads to the withdrawal of a proposal by its author; it will never be in force.</summary>
    /// <param name="revision">The revision.</param>
    /// <param name="already">Its approval, when it has one.</param>
    /// <param name="ended">Its rejection or withdrawal, when it has one.</param>
    /// <param name="actor">Who withdraws.</param>
    /// <param name="reason">Why.</param>
    /// <param name="stamp">Who and when.</param>
    public static Decision<RouteEnding> Withdraw(
        RouteRevision revision,
        RouteApproval? already,
        RouteEnding? ended,
        Actor actor,
        string reason,
        Stamp stamp
    ) =>
        End(
            RouteEndingKind.Withdrawn,
            revision,
            reason,
            stamp,
            Decided(revision, already, ended)
                ?? (
                    IsAuthor(revision, actor)
                        ? null
                        : Refusal.Forbidden(RefusalTexts.OnlyItsAuthorWithdraws(NameOf(revision), revision.Author))
                )
        );

    private static Decision<RouteEnding> End(RouteEndingKind kind, RouteRevision revision, string reason, Stamp stamp, Refusal? problem)
    {
        if (
            (problem ?? (string.IsNullOrWhiteSpace(reason) ? Refusal.Invalid("reason", RefusalTexts.SayWhyTheRouteIsNotUsed) : null)) is
            { } refusal
        )
        {
            return refusal;
        }

        var ending = new RouteEnding(stamp.NewId(), revision.Id, kind, reason.Trim(), stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        return Decision.Accept(ending, ending);
    }

    /// <summary>What was decided about a revision before; null while it waits.</summary>
    private static Refusal? Decided(RouteRevision revision, RouteApproval? already, RouteEnding? ended) =>
        revision.ApprovedBy != ""
            ? Refusal.Conflict(RefusalTexts.WasLoadedAsApproved(NameOf(revision), revision.ApprovedBy), RefusalCode.AlreadyDone)
        : already is not null ? Refusal.Conflict(RefusalTexts.IsApprovedAlready(NameOf(revision)), RefusalCode.AlreadyDone)
        : ended is { Kind: RouteEndingKind.Rejected }
            ? Refusal.Conflict(RefusalTexts.WasRejectedAlready(NameOf(revision), ended.Reason), RefusalCode.AlreadyDone)
        : ended is not null ? Refusal.Conflict(RefusalTexts.WasWithdrawnAlready(NameOf(revision), ended.Reason), RefusalCode.AlreadyDone)
        : null;

    private static bool IsAuthor(RouteRevision revision, Actor actor) =>
        string.Equals(actor.Badge, revision.Author, StringComparison.OrdinalIgnoreCase);

    private static string NameOf(RouteRevision revision) => RefusalTexts.RevisionOf(revision.Revision, revision.Model, revision.Kind);
}
