using Traceability.Domain.Gates;
using Traceability.Domain.Values;

namespace Traceability.Web.Features.Quality.Doubts;

/// <summary>
/// A span in which an instrument is in doubt, as a sentence: "CAP-02 is in doubt from 21 Sep 2026, 00:00 until now: a calibration found it
/// out of tolerance on 13 Nov 2026."
/// </summary>
public static class DoubtSentence
{
    public static string Of(string instrument, DoubtfulSpan span, WorkshopCalendar calendar) =>
        QualitySentences.IsInDoubt(
            instrument,
            span.Since is { } since ? calendar.Say(since) : QualitySentences.TheBeginning,
            span.Until is { } until ? calendar.Say(until) : QualitySentences.Now,
            span.Cause switch
            {
                DoubtCause.Calibration => QualitySentences.CalibrationFoundItOut(WorkshopCalendar.Say(calendar.DayOf(span.FoundAt))),
                DoubtCause.Check => QualitySentences.ItFailedItsCheck(calendar.Say(span.FoundAt)),
                _ => QualitySentences.ItWasStopped(calendar.Say(span.FoundAt)),
            }
        );
}
