using Traceability.Domain.Values;

namespace Traceability.Domain.Gates;

/// <summary>An attempt that was closed, as one of the instruments used in it sees it.</summary>
/// <param name="PartId">The part.</param>
/// <param name="Serial">Its serial.</param>
/// <param name="Stage">The stage's code.</param>
/// <param name="StageTitle">Its title, for people.</param>
/// <param name="Instrument">The instrument's code.</param>
/// <param name="Began">From when it was used.</param>
/// <param name="Ended">When the attempt ended.</param>
/// <param name="RecordedAt">When that was recorded.</param>
/// <param name="DoneAgain">True when the stage was closed again since: what was measured then counts.</param>
/// <param name="AcceptedAt">When it was last accepted, for a reason, although the instrument was in doubt.</param>
public sealed record MeasuredWith(
    Guid PartId,
    string Serial,
    string Stage,
    string StageTitle,
    string Instrument,
    DateTimeOffset Began,
    DateTimeOffset Ended,
    DateTimeOffset RecordedAt,
    bool DoneAgain,
    DateTimeOffset? AcceptedAt
)
{
    /// <summary>
    /// The span that makes it doubtful; null when none does, when it was done again, or when it was accepted since that was known.
    /// </summary>
    public DoubtfulSpan? DoubtIn(IEnumerable<DoubtfulSpan> spans) =>
        DoneAgain ? null : spans.FirstOrDefault(s => s.Covers(Began, Ended) && !(AcceptedAt >= s.KnownAt && AcceptedAt >= RecordedAt));

    /// <summary>What is in doubt, in words; null when nothing is.</summary>
    public InDoubt? DoubtInWords(IEnumerable<DoubtfulSpan> spans, WorkshopCalendar calendar) =>
        DoubtIn(spans) is not { } span
            ? null
            : new(PartId, Serial, Stage, Instrument, GateTexts.WasMeasuredInDoubt(Serial, StageTitle, Instrument, Why(span, calendar)));

    /// <summary>What was wrong with the instrument: "failed its check on 3 Nov 2026, 10:12".</summary>
    public static string Why(DoubtfulSpan span, WorkshopCalendar calendar) =>
        span.Cause switch
        {
            DoubtCause.Calibration => GateTexts.CauseCalibration(WorkshopCalendar.Say(calendar.DayOf(span.FoundAt))),
            DoubtCause.Check => GateTexts.CauseCheck(calendar.Say(span.FoundAt)),
            _ => GateTexts.CauseHold(calendar.Say(span.FoundAt)),
        };
}

/// <summary>Something measured on a part, or on something inside it, with an instrument in doubt; nobody has decided on it.</summary>
public sealed record InDoubt(Guid PartId, string Serial, string Stage, string Instrument, string Because);
