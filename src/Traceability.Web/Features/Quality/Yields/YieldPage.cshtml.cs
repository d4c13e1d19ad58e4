using System.Text;
using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Records;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.Yields;

/// <summary>Yields with their intervals drawn.</summary>
public sealed class YieldPage(ReadYield read, AnalysisFilters filters, Writes writes) : AnalysisPage(filters, writes)
{
    public YieldAnswer? Answer { get; private set; }

    public string? By => AnalysisQuery.Text(Request, "by");

    public string? Interval => AnalysisQuery.Text(Request, "interval");

    public async Task<IActionResult> OnGetAsync()
    {
        if (!May(Role.Quality))
        {
            return Forbid();
        }

        await LoadChoicesAsync();
        (Answer, var refusal) = await read.RunAsync(Asked, By, Interval, HttpContext.RequestAborted);
        return Shown(refusal);
    }

    /// <summary>The table as a file.</summary>
    public async Task<IActionResult> OnGetCsvAsync() =>
        May(Role.Quality) && (await read.RunAsync(Asked, By, Interval, HttpContext.RequestAborted)).Answer is { } answer
            ? File(Encoding.UTF8.GetBytes(Csv.Of(answer.Items)), "text/csv", "yield.csv")
            : Forbid();
}
