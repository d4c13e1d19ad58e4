using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Lots;

/// <summary>Records that a lot is released, or put (back) into quarantine.</summary>
public sealed class LotDecisions(WorkshopContext db, Writes writes, LotQuery lots, FilmLotRoute filmRoute)
{
    /// <summary>Records it with the reason; a film lot that is released travels on along its own route.</summary>
    public async Task<Answer<LotAnswer>> RunAsync(
        string number,
        LotState state,
        string reason,
        DateTimeOffset? occurredAt,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (Timing.Problem(occurredAt, writes.Now, actor) is { } wrongTime)
        {
            return wrongTime;
        }

        if (string.IsNullOrWhiteSpace(reason))
        {
            return Refusal.Invalid("reason", SetupSentences.SayWhyThisWasDecided);
        }

        var code = number.Trim().ToUpperInvariant();
        if (await lots.StandingOfAsync(db.Set<Lot>().Where(l => l.Number == code), cancellation) is not [var found])
        {
            return Refusal.NotFound(SetupSentences.ThereIsNoLot(number));
        }

        if (state == LotState.Released && found.RetiredBecause is { } retired)
        {
            return Refusal.Conflict(SetupSentences.LotIsRetired(code, retired), RefusalCode.Retired);
        }

        if (found.State == state && found.Reason is not null)
        {
            return Refusal.Conflict(
                state == LotState.Released
                    ? SetupSentences.LotIsReleasedAlready(code, found.Reason)
                    : SetupSentences.LotIsInQuarantineAlready(code, found.Reason),
                RefusalCode.AlreadyDone
            );
        }

        var stamp = writes.Stamp(actor.PersonId, occurredAt);
        var decision = new LotDecision(stamp.NewId(), found.Lot.Id, state, reason.Trim(), stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        if (state == LotState.Quarantined || found.Lot.Kind != Lot.FilmKind)
        {
            await writes.Book.AppendAsync(
                found.Lot.Id,
                state == LotState.Released ? "release-lot" : "quarantine-lot",
                [decision],
                cancellation
            );
        }
        else if (await filmRoute.ReleaseAsync(found.Lot, decision, stamp, cancellation) is { } refusal)
        {
            return refusal;
        }

        return Answer.Ok(LotAnswer.Of(found with { State = state, Reason = decision.Reason }));
    }
}
