using Traceability.Domain.Gates;
using Traceability.Domain.Values;

namespace Traceability.Domain.Quality.Tracing;

/// <summary>
/// From when until when a trace of an instrument looks: the latest span in which its readings are in doubt, or, when nothing was ever wrong
/// with it, everything since its latest good proof, which is what a fault found now would touch.
/// </summary>
/// <param name="Since">The last good proof before the doubt; null when there never was one, so that all readings are in doubt.</param>
/// <param name="Until">The first good proof after it was found wrong or stopped; null while the doubt lasts.</param>
/// <param name="FoundAt">When it was found wrong or stopped; null when it never was.</param>
public sealed record InstrumentDoubt(DateTimeOffset? Since, DateTimeOffset? Until, DateTimeOffset? FoundAt)
{
    /// <summary>The latest doubt about an instrument.</summary>
    public static InstrumentDoubt Of(InstrumentStanding instrument, WorkshopCalendar calendar) =>
        DoubtfulSpan.Of(instrument, calendar) is [.., var last]
            ? new(last.Since, last.Until, last.FoundAt)
            : new(DoubtfulSpan.LastGoodProof(instrument, calendar), null, null);
}
