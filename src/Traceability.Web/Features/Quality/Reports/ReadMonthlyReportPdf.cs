using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Traceability.Documents.Reports;
using Traceability.Domain.Records;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Reports;

/// <summary>The report of a month as a file to print.</summary>
public sealed class ReadMonthlyReportPdf : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/quality/monthly-report.pdf", HandleAsync)
            .For(Role.Quality)
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf")
            .Is(
                Subjects.Analyses,
                "readMonthlyReportPdf",
                "The report of a month such as 2026-10: yields, film lots, what failed, what is open, charts."
            );

    /// <param name="month" example="2026-10">The month: year and month; it must be named.</param>
    public static async Task<Results<FileContentHttpResult, Problem>> HandleAsync(
        HttpContext http,
        [FromQuery] string? month,
        ReadMonthlyReport read,
        CancellationToken cancellation
    )
    {
        var (report, refusal) = await read.RunAsync(month, cancellation);
        if (report is null)
        {
            return ProblemAnswers.From(refusal!);
        }

        http.Response.Headers.ContentDisposition = $"inline; filename=\"quality-report-{report.Month}.pdf\"";
        return TypedResults.Bytes(MonthlyReportPdf.Render(report), "application/pdf");
    }
}
