using Traceability.Domain.Gates;
using Traceability.Domain.Routes;
using Traceability.Domain.Values;

namespace Traceability.Domain.Quality.Tracing;

/// <summary>
/// What the check of an instrument after a measurement says of it. A stage that asks for a check on the day before it starts asks for one after it
/// too, because an instrument may go wrong during a series. It comes after the verdict, so it is said beside the stored findings and never changes one.
/// </summary>
/// <remarks>Common practice, no source. Checks: <c>ProofAfterTests</c>.</remarks>
public static class ProofAfter
{
    /// <summary>What is to be said, in words; nothing when every instrument was proved after the attempt on the same day.</summary>
    public static IReadOnlyList<string> Of(AttemptView attempt, Stage? stage, IReadOnlyList<InstrumentStanding> instruments, DateTimeOffset now, WorkshopCalendar calendar)
    {
        if (stage is not { CheckedToday: true } || attempt is not { Closed: true, Ending: { } ending })
        {
            return [];
        }

        var used = attempt.Instruments.Select(u => u.InstrumentId).ToHashSet();
        return [.. instruments.Where(i => used.Contains(i.Instrument.Id) && i.Instrument.CheckNominal is not null).Select(i => OfInstrument(i, ending.OccurredAt, now, calendar)).OfType<string>()];
    }

    private static string? OfInstrument(InstrumentStanding instrument, DateTimeOffset ended, DateTimeOffset now, WorkshopCalendar calendar)
    {
        var (code, day) = (instrument.Instrument.Code, calendar.DayOf(ended));
        return instrument.Checks.Where(c => c.OccurredAt > ended).OrderBy(c => c.OccurredAt).FirstOrDefault() switch
        {
            { Passed: false } bad => $"{code} failed its check against the reference on {calendar.Say(bad.OccurredAt)}, after this test: the readings are in doubt until the quality lead has looked at everything that {code} touched",
            { } good when calendar.DayOf(good.OccurredAt) == day => null,
            { } later => $"{code} was not checked against its reference again on the day, after this test; it was found good on {calendar.Say(later.OccurredAt)}",
            _ when calendar.DayOf(now) > day => $"{code} was not checked against its reference again after this test: only the check before it proves the readings",
            _ => $"{code} is still to be checked against its reference after this test, before the day ends",
        };
    }
}
