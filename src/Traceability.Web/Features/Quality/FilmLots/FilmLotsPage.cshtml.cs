using System.Text;
using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Records;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.FilmLots;

/// <summary>Is it this film lot: all lots of a period with their intervals drawn.</summary>
public sealed class FilmLotsPage(CompareFilmLots compare, AnalysisFilters filters, Writes writes) : AnalysisPage(filters, writes)
{
    /// <summary>The answer; null when the question was refused.</summary>
    public FilmLotAnswer? Answer { get; private set; }

    public string? Interval => AnalysisQuery.Text(Request, "interval");

    public string? Stratify => AnalysisQuery.Text(Request, "stratify");

    public async Task<IActionResult> OnGetAsync()
    {
        if (!May(Role.Quality))
        {
            return Forbid();
        }

        await LoadChoicesAsync();
        (Answer, var refusal) = await compare.RunAsync(Asked, Interval, Stratify, HttpContext.RequestAborted);
        return Shown(refusal);
    }

    /// <summary>The table as a file.</summary>
    public async Task<IActionResult> OnGetCsvAsync()
    {
        var (answer, _) = May(Role.Quality) ? await compare.RunAsync(Asked, Interval, Stratify, HttpContext.RequestAborted) : default;
        return answer is null ? Forbid() : File(Encoding.UTF8.GetBytes(Csv.Of(answer.Items)), "text/csv", "film-lots.csv");
    }

    /// <summary>The parts behind a number of a lot.</summary>
    public string PartsOf(string lot, string? fate = null, string? place = null) =>
        Kept($"/quality/film-lots/{Uri.EscapeDataString(lot)}", [], ("fate", fate), ("place", place));
}
