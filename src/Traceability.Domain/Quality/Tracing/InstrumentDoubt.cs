using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Domain.Quality.Tracing;

/// <summary>
/// From when until when the readings of an instrument are in doubt: everything between the last good proof before it was found wrong and
/// the first good one after. A proof is a calibration or a check. A good calibration counts from the beginning of its day and a bad one
/// to the end of its day, because the hour is not known and a part too many is better than one too few.
/// </summary>
/// <param name="Since">The last good proof before the doubt; null when there never was one, so that all readings are in doubt.</param>
/// <param name="Until">The first good proof after it was found wrong; null while the doubt lasts.</param>
/// <param name="FoundAt">When it was found wrong; null when it never was, and the question is only what a fault found now would touch.</param>
public sealed record InstrumentDoubt(DateTimeOffset? Since, DateTimeOffset? Until, DateTimeOffset? FoundAt)
{
    /// <summary>The latest doubt about an instrument.</summary>
    public static InstrumentDoubt Of(InstrumentStanding instrument, WorkshopCalendar calendar)
    {
        List<(DateTimeOffset At, bool Passed)> proofs =
        [
            .. instrument.Calibrations.Select(c => (At: MomentOf(c, calendar), c.Passed))
                .Concat(instrument.Checks.Select(c => (At: c.OccurredAt, c.Passed))).OrderBy(p => p.At),
        ];
        var last = proofs.FindLastIndex(p => !p.Passed);
        if (last < 0)
        {
            return new(proofs.Count == 0 ? null : proofs[^1].At, null, null);
        }

        var good = proofs.FindLastIndex(last, p => p.Passed);
        return new(good < 0 ? null : proofs[good].At, last + 1 < proofs.Count ? proofs[last + 1].At : null, proofs[good + 1].At);
    }

    private static DateTimeOffset MomentOf(Calibration c, WorkshopCalendar calendar) =>
        c.Passed ? calendar.StartOf(c.CalibratedOn) : calendar.EndOf(c.CalibratedOn);
}
