using System.Text;
using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Records;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.FilmLots;

/// <summary>One film lot down to its units: every diaphragm with its fate, its capsule and its unit.</summary>
public sealed class FilmLotPage(ListFilmLotParts list, CompareFilmLots compare, AnalysisFilters filters, Writes writes)
    : AnalysisPage(filters, writes)
{
    /// <summary>More lines than this are not read on a screen; the file has them all.</summary>
    public const int Most = 500;

    [FromRoute]
    public string Number { get; set; } = "";

    public string? Fate => AnalysisQuery.Text(Request, "fate");

    public string? Place => AnalysisQuery.Text(Request, "place");

    public IReadOnlyList<FilmLotPart> Parts { get; private set; } = [];

    /// <summary>The lot's line of the comparison in words.</summary>
    public string? Sentence { get; private set; }

    public async Task<IActionResult> OnGetAsync()
    {
        if (!May(Role.Quality))
        {
            return Forbid();
        }

        await LoadChoicesAsync();
        var (rows, refusal) = await RowsAsync();
        (Parts, Number) = (rows ?? [], Number.ToUpperInvariant());
        Sentence = (await compare.RunAsync(Asked, null, null, HttpContext.RequestAborted))
            .Answer?.Items.FirstOrDefault(l => l.Lot == Number)
            ?.Sentence;
        return Shown(refusal);
    }

    /// <summary>The whole list as a file.</summary>
    public async Task<IActionResult> OnGetCsvAsync() =>
        May(Role.Quality) && (await RowsAsync()).Rows is { } rows
            ? File(Encoding.UTF8.GetBytes(Csv.Of(rows)), "text/csv", $"film-lot-{Number}.csv")
            : Forbid();

    private Task<(IReadOnlyList<FilmLotPart>? Rows, Domain.Work.Refusal? Refusal)> RowsAsync() =>
        list.RunAsync(Number, Asked, Fate, Place, HttpContext.RequestAborted);
}
