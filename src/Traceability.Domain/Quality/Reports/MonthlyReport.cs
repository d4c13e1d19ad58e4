using Traceability.Domain.Values;

namespace Traceability.Domain.Quality.Reports;

/// <summary>
/// Makes the monthly report from the facts. It adds no statistics of its own: yields with Wilson's intervals, film lots against the rest,
/// Fisher's exact test between two months, Benjamini-Hochberg over all of them, the Pareto chart and Nelson's rules are those of the desk.
/// </summary>
/// <remarks>Pure: equal facts give equal documents. Checked by <c>MonthlyReportTests</c>.</remarks>
public static class MonthlyReport
{
    /// <summary>Makes the report.</summary>
    public static MonthlyReportDocument Of(MonthlyReportFacts facts)
    {
        var month = facts.Month;
        var words = new MonthWords(facts);
        return new()
        {
            WorkshopName = facts.WorkshopName,
            InventedDataNotice = facts.InventedDataNotice,
            Month = month.Code,
            Title = month.Title,
            From = facts.Calendar.Local(month.From),
            AsOf = facts.Calendar.Local(month.AsOf),
            DrawnUpAt = facts.Calendar.Local(facts.DrawnUpAt),
            TimeZone = facts.Calendar.Zone.Id,
            SoFar = month.SoFar,
            Period = PeriodOf(facts),
            Nothing = NothingOf(facts, words),
            Output = OutputOf(facts, words),
            Yields = MonthYields.Of(facts, words),
            FilmLots = MonthFilmLots.Of(facts, words),
            Failures = MonthFailures.Of(facts, words),
            Waiting = MonthStopped.WaitingOf(facts, words),
            Holds = MonthStopped.HoldsOf(facts, words),
            Returns = MonthStopped.ReturnsOf(facts, words),
            Trend = MonthYields.TrendOf(facts, words),
            Control = MonthControlCharts.Of(facts, words),
            Instruments = MonthInstruments.Of(facts, words),
        };
    }

    private static string PeriodOf(MonthlyReportFacts facts)
    {
        var (month, calendar) = (facts.Month, facts.Calendar);
        var first = WorkshopCalendar.Say(month.First);
        return month.SoFar
            ? $"{month.Title} so far, as of {calendar.Say(month.AsOf)}: the month is not over and its figures will change"
                + $" ({calendar.Zone.Id} time)"
            : $"{first} to {WorkshopCalendar.Say(month.First.AddMonths(1).AddDays(-1))}, both days whole ({calendar.Zone.Id} time);"
                + $" drawn up {calendar.Say(facts.DrawnUpAt)}";
    }

    private static string? NothingOf(MonthlyReportFacts facts, MonthWords words) =>
        facts.Output.Count + facts.Stages.Count + facts.Film.Fates.Sum(f => f.Parts) + facts.FailureCodes.Count + facts.Returns.Count == 0
            ? $"Nothing was recorded {words.InTheMonth}: no stage came to a verdict, no film was fitted, no unit was finished, sent out"
                + " or came back, and no nonconformity was raised. What was open before stands below."
            : null;

    private static OutputSection OutputOf(MonthlyReportFacts facts, MonthWords words) =>
        new(
            facts.Output.Sum(o => o.Finished),
            facts.Output.Sum(o => o.Shipped),
            facts.Output.Sum(o => o.SentAgain),
            facts.Output,
            facts.Output.Count == 0 ? $"No unit was finished or sent out {words.InTheMonth}." : null,
            "Finished: units that passed the last stage of their route, or were conceded there, for the first time in the month."
                + " Shipped: recorded shipments of the month; sent again: those of units that had left before."
        );
}
