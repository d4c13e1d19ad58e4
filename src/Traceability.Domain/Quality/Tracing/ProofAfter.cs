using Traceability.Domain.Gates;
using Traceability.Domain.Routes;
using Traceability.Domain.Values;

namespace Traceability.Domain.Quality.Tracing;

/// <summary>
/// What the check of an instrument after a measurement says of it. A stage that asks for a check on the day before it starts asks for one
/// after it too, because an instrument may go wrong during a series. It comes after the verdict, so it is said beside the stored findings
/// and never changes one.
/// </summary>
/// <remarks>Common practice, no source. Checks: <c>ProofAfterTests</c>.</remarks>
public static class ProofAfter
{
    /// <summary>What is to be said, in words; nothing when every instrument was proved after the attempt on the same day.</summary>
    public static IReadOnlyList<string> Of(
        AttemptView attempt,
        Stage? stage,
        IReadOnlyList<InstrumentStanding> instruments,
        DateTimeOffset now,
        WorkshopCalendar calendar
    )
    {
        if (stage is not { CheckedToday: true } || attempt is not { Closed: true, Ending: { } ending })
        {
            return [];
        }

        var used = attempt.Instruments.Select(u => u.InstrumentId).ToHashSet();
        return
        [
            .. instruments
                .Where(i => used.Contains(i.Instrument.Id) && i.Instrument.CheckNominal is not null)
                .Select(i => OfInstrument(i, ending.OccurredAt, now, calendar))
                .OfType<string>(),
        ];
    }

    private static string? OfInstrument(InstrumentStanding instrument, DateTimeOffset ended, DateTimeOffset now, WorkshopCalendar calendar)
    {
        var (code, day) = (instrument.Instrument.Code, calendar.DayOf(ended));
        return instrument.Checks.Where(c => c.OccurredAt > ended).OrderBy(c => c.OccurredAt).FirstOrDefault() switch
        {
            { Passed: false } bad => ProofTexts.FailedItsCheckAfterwards(code, calendar.Say(bad.OccurredAt)),
            { } good when calendar.DayOf(good.OccurredAt) == day => null,
            { } later => ProofTexts.WasFoundGoodLater(code, calendar.Say(later.OccurredAt)),
            _ when calendar.DayOf(now) > day => ProofTexts.WasNotCheckedAgain(code),
            _ => ProofTexts.IsStillToBeChecked(code),
        };
    }
}
