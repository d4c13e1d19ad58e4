using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Quality.Reports;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.Reports;

/// <summary>Choose a month, see its main figures, take its report away.</summary>
public sealed class MonthlyReportPage(
    ReadMonthlyReport read,
    WorkshopContext db,
    WorkshopCalendar calendar,
    AnalysisFilters filters,
    Writes writes
) : AnalysisPage(filters, writes)
{
    /// <summary>Older months can be asked for in the address.</summary>
    private const int MostMonths = 60;

    /// <summary>The report; null when the month was refused.</summary>
    public MonthlyReportDocument? Report { get; private set; }

    /// <summary>The first days of the months to choose from, the latest first.</summary>
    public IReadOnlyList<DateOnly> Months { get; private set; } = [];

    /// <summary>What was asked for; the last whole month otherwise.</summary>
    public string Month => AnalysisQuery.Text(Request, "month") ?? ReportMonth.CodeOf(calendar.DayOf(Now).AddMonths(-1));

    public async Task<IActionResult> OnGetAsync()
    {
        if (!May(Role.Quality))
        {
            return Forbid();
        }

        var cancellation = HttpContext.RequestAborted;
        var today = calendar.DayOf(Now);
        var latest = today.AddDays(1 - today.Day);
        var earliest = calendar.DayOf(await db.Set<Attempt>().MinAsync(a => (DateTimeOffset?)a.OccurredAt, cancellation) ?? Now);
        Months =
        [
            .. Enumerable
                .Range(0, MostMonths)
                .Select(i => latest.AddMonths(-i))
                .TakeWhile((month, i) => i < 2 || month.AddMonths(1) > earliest),
        ];
        (Report, var refusal) = await read.RunAsync(Month, cancellation);
        if (Report is { } report && Months.All(m => ReportMonth.CodeOf(m) != report.Month))
        {
            Months = [.. Months, calendar.DayOf(report.From)];
        }

        return Shown(refusal);
    }
}
