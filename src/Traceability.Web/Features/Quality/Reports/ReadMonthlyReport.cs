using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Quality.Reports;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Reports;

/// <summary>The report of a month, drawn up when it is asked for.</summary>
public sealed class ReadMonthlyReport(MonthlyReportSources sources, WorkshopCalendar calendar, TimeProvider clock) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/quality/monthly-report.json", HandleAsync)
            .For(Role.Quality)
            .Is(Subjects.Analyses, "readMonthlyReport", "The same document for programs.");

    /// <param name="month" example="2026-10">The month: year and month; it must be named.</param>
    public static async Task<Results<Ok<MonthlyReportDocument>, Problem>> HandleAsync(
        [FromQuery] string? month,
        ReadMonthlyReport use,
        CancellationToken cancellation
    )
    {
        var (report, refusal) = await use.RunAsync(month, cancellation);
        return report is null ? ProblemAnswers.From(refusal!) : TypedResults.Ok(report);
    }

    /// <summary>The report of a month such as "2026-10", or what is wrong with the question.</summary>
    public async Task<(MonthlyReportDocument? Report, Refusal? Refusal)> RunAsync(string? month, CancellationToken cancellation)
    {
        var now = clock.GetUtcNow();
        var (asked, refusal) = ReportMonth.Read(month, now, calendar);
        return asked is null ? (null, refusal) : (MonthlyReport.Of(await sources.OfAsync(asked, now, cancellation)), null);
    }
}
