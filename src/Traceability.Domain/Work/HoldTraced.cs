using Traceability.Domain.Gates;
using Traceability.Domain.Quality.Tracing;
using Traceability.Domain.Records;

namespace Traceability.Domain.Work;

/// <summary>What holding everything that a trace found leads to for one part.</summary>
public static class HoldTraced
{
    /// <summary>The end of the reason by which the holds of a trace are known: " (trace of lot F-26-031)".</summary>
    public static string MarkOf(TraceKind kind, string code) => $" (trace of {kind.Code()} {code})";

    /// <summary>
    /// A hold on the part; null when there is nothing to stop: it is scrapped, or stopped for the same reason already. A unit that is with
    /// a customer is held too, so that it stops when it comes back.
    /// </summary>
    public static Hold? On(Dossier part, string reason, Stamp stamp) =>
        part.Scrapped || part.OpenHolds().Any(h => h.Reason == reason)
            ? null
            : new(stamp.NewId(), null, part.Part.Id, null, reason, stamp.By, stamp.OccurredAt, stamp.RecordedAt);
}
