using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Traceability.Documents.Reports;
using Traceability.Domain.Quality.Reports;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Reports;

/// <summary>The report of a month, drawn up when it is asked for.</summary>
public sealed class ReadMonthlyReport(GatherMonth gather, WorkshopCalendar calendar, TimeProvider clock) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/quality/monthly-report.pdf", PdfAsync)
            .For(Role.Quality)
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf")
            .Is(
                Subjects.Analyses,
                "readMonthlyReportPdf",
                "The report of a month such as 2026-10: yields, film lots, what failed, what is open, charts."
            );
        api.MapGet("/quality/monthly-report.json", JsonAsync)
            .For(Role.Quality)
            .Is(Subjects.Analyses, "readMonthlyReport", "The same document for programs.");
    }

    public static async Task<Results<FileContentHttpResult, Problem>> PdfAsync(
        HttpContext http,
        [FromQuery] string? month,
        ReadMonthlyReport use,
        CancellationToken cancellation
    )
    {
        var (report, refusal) = await use.RunAsync(month, cancellation);
        if (report is null)
        {
            return ProblemAnswers.From(refusal!);
        }

        http.Response.Headers.ContentDisposition = $"inline; filename=\"quality-report-{report.Month}.pdf\"";
        return TypedResults.Bytes(MonthlyReportPdf.Render(report), "application/pdf");
    }

    public static async Task<Results<Ok<MonthlyReportDocument>, Problem>> JsonAsync(
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
        return asked is null ? (null, refusal) : (MonthlyReport.Of(await gather.OfAsync(asked, now, cancellation)), null);
    }
}
