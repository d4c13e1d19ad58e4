using Traceability.Domain.Values;

namespace Traceability.Domain.Work;

/// <summary>
/// The order of recording is the order of the server's clock: what happened first, which pass counts, what a correction supersedes. A clock
/// that was put back would mix new facts among old ones, for good; so nothing is written until it has caught up or was set right.
/// </summary>
public static class ServerClock
{
    /// <summary>How far behind the newest record the clock may be: the servers of two instances are never quite alike.</summary>
    public static readonly TimeSpan Tolerance = TimeSpan.FromMinutes(1);

    /// <summary>The refusal of everything that would be recorded at <paramref name="now"/>, or null when the clock runs on.</summary>
    public static Refusal? Behind(DateTimeOffset now, DateTimeOffset? newestRecordedAt) =>
        newestRecordedAt is { } newest && now < newest - Tolerance
            ? new(
                RefusalKind.Unavailable,
                RefusalTexts.ServerClockIsBehind(WorkshopCalendar.Utc.SayWithZone(now), WorkshopCalendar.Utc.SayWithZone(newest)),
                [],
                new Dictionary<string, string[]>()
            )
            : null;
}
