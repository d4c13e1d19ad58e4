using Traceability.Domain.Gates;
using Traceability.Domain.Records;

namespace Traceability.Domain.Work.QualityDecisions;

/// <summary>What holding everything that a trace found, and lifting it again, leads to.</summary>
public static class HoldsOfTrace
{
    /// <summary>The end of the reason by which the holds of a trace are known: " (trace of lot F-26-031)".</summary>
    public static string MarkOf(TraceKind kind, string code) => $" (trace of {kind.Code()} {code})";

    /// <summary>
    /// A hold on the part; null when there is nothing to stop: it is scrapped, or stopped for the same reason already. A unit that is with
    /// a customer is held too, so that it stops when it comes back.
    /// </summary>
    public static Hold? Put(Dossier part, string reason, Stamp stamp) =>
        part.Scrapped || part.OpenHolds().Any(h => h.Reason == reason)
            ? null
            : new(stamp.NewId(), null, part.Part.Id, null, reason, stamp.By, stamp.OccurredAt, stamp.RecordedAt);

    /// <summary>
    /// A release of every hold of the decision that is still in force, all for one reason. A hold that was lifted before keeps its own
    /// release, and holds that other decisions put on the same things stay. Refused without a reason, and when nothing is left to lift.
    /// </summary>
    public static Decision<IReadOnlyList<Hold>> Lift(TracedDecision decision, string? reason, Stamp stamp)
    {
        if (string.IsNullOrWhiteSpace(reason))
        {
            return Refusal.Invalid("reason", RefusalTexts.SayWhyAllOfItIsLifted);
        }

        var open = decision.Open;
        return open.Count == 0
            ? Refusal.Conflict(RefusalTexts.EverythingIsLiftedAlready, RefusalCode.AlreadyDone)
            : Decision.Accept(
                open,
                [.. open.Select(h => new HoldRelease(stamp.NewId(), h.Id, reason.Trim(), stamp.By, stamp.OccurredAt, stamp.RecordedAt))]
            );
    }
}
