using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Domain.Gates;

/// <summary>What put an instrument in doubt.</summary>
public enum DoubtCause
{
    /// <summary>A calibration found it out of tolerance.</summary>
    Calibration,

    /// <summary>It failed a check against its reference.</summary>
    Check,

    /// <summary>It was put on hold.</summary>
    Hold,
}

/// <summary>
/// A span in which the readings of an instrument are in doubt: from its last good proof before something was wrong with it to its first
/// good one after. A proof is a calibration or a check. That it is good again proves nothing of what was measured before it failed; but a
/// hold alone is a question, and a good proof after it, once it is lifted, is the answer: what was measured then lies between two good
/// proofs with nothing wrong between them.
/// </summary>
/// <remarks>
/// A calibration that is entered on its day counts from when it is said to have been made. Of one entered later the hour is not known: a
/// good one counts from the beginning of its day and a bad one to its end, because a part too many is better than one too few; but a good
/// one that was entered after a bad one of the same day (found bad, adjusted, found good) comes after it. Common practice, no source.
/// Checks: <c>DoubtfulSpanTests</c>, <c>InstrumentDoubtTests</c>.
/// </remarks>
/// <param name="Since">The last good proof before; null when there never was one, so that everything before is in doubt.</param>
/// <param name="Until">The first good proof after; null while there is none.</param>
/// <param name="Cause">What put it in doubt; a failure goes before a hold.</param>
/// <param name="FoundAt">When that happened.</param>
/// <param name="KnownAt">When that was recorded: a decision before it was taken without knowing.</param>
public sealed record DoubtfulSpan(
    DateTimeOffset? Since,
    DateTimeOffset? Until,
    DoubtCause Cause,
    DateTimeOffset FoundAt,
    DateTimeOffset KnownAt
)
{
    /// <summary>True when work between these moments reaches into the span.</summary>
    public bool Covers(DateTimeOffset began, DateTimeOffset ended) => !(began > Until) && !(ended < Since);

    /// <summary>Every span of an instrument, oldest first.</summary>
    public static IReadOnlyList<DoubtfulSpan> Of(InstrumentStanding instrument, WorkshopCalendar calendar)
    {
        var spans = new List<DoubtfulSpan>();
        var wrong = new List<Event>();
        Event? good = null;
        foreach (var now in EventsOf(instrument, calendar))
        {
            if (now.Wrong is not null)
            {
                wrong.Add(now);
                continue;
            }

            spans.AddRange(Between(good, wrong, now));
            wrong.Clear();
            good = now;
        }

        return [.. spans, .. Between(good, wrong, null)];
    }

    /// <summary>From when the latest good proof of an instrument counts; null when it has none.</summary>
    public static DateTimeOffset? LastGoodProof(InstrumentStanding instrument, WorkshopCalendar calendar) =>
        EventsOf(instrument, calendar).LastOrDefault(e => e.Wrong is null)?.CountsFrom;

    private static IEnumerable<DoubtfulSpan> Between(Event? before, List<Event> wrong, Event? after)
    {
        var failed = wrong.Where(e => e.Wrong is not DoubtCause.Hold).ToList();
        var answered = after is not null && wrong.TrueForAll(e => e.Lifted);
        if (wrong.Count == 0 || (failed.Count == 0 && answered))
        {
            return [];
        }

        var causes = failed.Count > 0 ? failed : wrong;
        return [new(before?.CountsFrom, after?.At, causes[0].Wrong!.Value, causes[0].At, causes.Min(e => e.RecordedAt))];
    }

    private static IEnumerable<Event> EventsOf(InstrumentStanding i, WorkshopCalendar calendar) =>
        i
            .Calibrations.Select(c => EventOf(c, i, calendar))
            .Concat(i.Checks.Select(c => new Event(c.OccurredAt, c.OccurredAt, c.RecordedAt, c.Passed ? null : DoubtCause.Check, false)))
            .Concat(i.OpenHolds.Select(h => new Event(h.OccurredAt, h.OccurredAt, h.RecordedAt, DoubtCause.Hold, false)))
            .Concat(i.LiftedHolds.Select(h => new Event(h.OccurredAt, h.OccurredAt, h.RecordedAt, DoubtCause.Hold, true)))
            .OrderBy(e => e.At)
            .ThenBy(e => e.RecordedAt);

    private static Event EventOf(Calibration c, InstrumentStanding i, WorkshopCalendar calendar)
    {
        var (start, end) = (calendar.StartOf(c.CalibratedOn), calendar.EndOf(c.CalibratedOn));
        var onTheDay = c.OccurredAt >= start && c.OccurredAt <= end;
        var adjusted = c.Passed && i.Calibrations.Any(b => !b.Passed && b.CalibratedOn == c.CalibratedOn && b.RecordedAt < c.RecordedAt);
        var at =
            onTheDay ? c.OccurredAt
            : c.Passed && !adjusted ? start
            : end;
        return new(at, adjusted ? at : start, c.RecordedAt, c.Passed ? null : DoubtCause.Calibration, false);
    }

    private sealed record Event(DateTimeOffset At, DateTimeOffset CountsFrom, DateTimeOffset RecordedAt, DoubtCause? Wrong, bool Lifted);
}
