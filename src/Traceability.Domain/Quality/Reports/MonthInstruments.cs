using Traceability.Domain.Gates;
using Traceability.Domain.Values;

namespace Traceability.Domain.Quality.Reports;

/// <summary>Instruments that need something at the end of the month: held, found wrong, never calibrated, overdue or soon due.</summary>
internal static class MonthInstruments
{
    private const int DaysAhead = 30;

    public static InstrumentSection Of(MonthlyReportFacts facts, MonthWords words)
    {
        // The end of the month is the first moment of the next one; its day is the one before.
        var day = facts.Calendar.DayOf(facts.Month.SoFar ? facts.Month.AsOf : facts.Month.AsOf.AddTicks(-1));
        var until = day.AddDays(DaysAhead);
        var held = facts.Holds.Where(h => h.Subject == "instrument").ToLookup(h => h.Code, h => h.Reason);
        InstrumentStanding[] there = [.. facts.Instruments.Where(i => WasThere(i, day, facts))];
        var lines = there
            .Select(i => (Rank: RankOf(i, day, until, held), Standing: i))
            .Where(i => i.Rank < Need.None)
            .OrderBy(i => i.Rank)
            .ThenBy(i => i.Standing.LatestCalibration(day)?.DueOn)
            .ThenBy(i => i.Standing.Instrument.Code, StringComparer.Ordinal)
            .Select(i => LineOf(i.Standing, i.Rank, day, held));
        InstrumentLine[] all = [.. lines];
        return new(
            there.Length,
            until,
            all,
            there.Length == 0 ? $"No instrument was known {words.AtTheEnd}."
                : all.Length == 0
                    ? $"None of {MonthWords.Counted(there.Length, "instrument")} is on hold, out of calibration or due until"
                        + $" {WorkshopCalendar.Say(until)}."
                : null,
            $"Of {MonthWords.Counted(there.Length, "instrument")} those that {words.AtTheEnd} were on hold, were found wrong at their"
                + " latest calibration, were never calibrated, or whose calibration had run out or runs out until"
                + $" {WorkshopCalendar.Say(until)} ({DaysAhead} days on)."
        );
    }

    /// An instrument is registered when the workshop begins to use the program; what was calibrated, proved or measured with before was
    /// there before.
    private static bool WasThere(InstrumentStanding i, DateOnly day, MonthlyReportFacts facts) =>
        i.Instrument.OccurredAt < facts.Month.AsOf
        || i.LatestCalibration(day) is not null
        || i.Checks.Any(c => c.OccurredAt < facts.Month.AsOf)
        || facts.InstrumentsUsed.Contains(i.Instrument.Code);

    private enum Need
    {
        Held,
        Wrong,
        Never,
        Overdue,
        Soon,
        None,
    }

    private static Need RankOf(InstrumentStanding instrument, DateOnly day, DateOnly until, ILookup<string, string> held) =>
        held.Contains(instrument.Instrument.Code)
            ? Need.Held
            : instrument.LatestCalibration(day) switch
            {
                null => Need.Never,
                { Passed: false } => Need.Wrong,
                { } c when c.DueOn < day => Need.Overdue,
                { } c when c.DueOn <= until => Need.Soon,
                _ => Need.None,
            };

    private static InstrumentLine LineOf(InstrumentStanding instrument, Need need, DateOnly day, ILookup<string, string> held)
    {
        var latest = instrument.LatestCalibration(day);
        return new(
            instrument.Instrument.Code,
            instrument.Instrument.Title,
            latest?.CalibratedOn,
            latest?.DueOn,
            need switch
            {
                Need.Held => $"on hold: {string.Join("; ", held[instrument.Instrument.Code])}",
                Need.Wrong => "found wrong at its latest calibration",
                Need.Never => "never calibrated",
                Need.Overdue => $"overdue for {MonthWords.Counted(day.DayNumber - latest!.DueOn.DayNumber, "day")}",
                _ => $"due in {MonthWords.Counted(latest!.DueOn.DayNumber - day.DayNumber, "day")}",
            }
        );
    }
}
