using System.Text;
using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Records;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.Causes;

/// <summary>What do the failures have in common: the ranked factors of a stage, and the parts behind each number.</summary>
public sealed class CausesPage(RankCauses rank, ListCauseParts list, AnalysisFilters filters, Writes writes) : AnalysisPage(filters, writes)
{
    /// <summary>Lines shown; the file has them all.</summary>
    public const int Most = 30;

    public CauseAnswer? Answer { get; private set; }

    /// <summary>The parts of one level, when one was chosen.</summary>
    public IReadOnlyList<CausePart>? Parts { get; private set; }

    public string? Characteristic => AnalysisQuery.Text(Request, "characteristic");

    public string? Code => AnalysisQuery.Text(Request, "code");

    public string? Factor => AnalysisQuery.Text(Request, "factor");

    public string? Level => AnalysisQuery.Text(Request, "level");

    /// <summary>The characteristics of the chosen stage.</summary>
    public IReadOnlyList<Domain.Routes.Characteristic> Characteristics { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync()
    {
        if (!May(Role.Quality))
        {
            return Forbid();
        }

        await LoadChoicesAsync();
        Characteristics =
        [
            .. Stages.Where(s => s.Stage.Code == Asked.Stage).SelectMany(s => s.Stage.Characteristics).DistinctBy(c => c.Name),
        ];
        if (Asked.Stage is null)
        {
            return Page();
        }

        (Answer, var refusal) = await rank.RunAsync(Asked, Known, Code, HttpContext.RequestAborted);
        if (refusal is null && Factor is not null)
        {
            (Parts, refusal) = await list.RunAsync(Asked, Known, Code, Factor, Level, HttpContext.RequestAborted);
        }

        return Shown(refusal);
    }

    /// <summary>The ranking as a file.</summary>
    public async Task<IActionResult> OnGetCsvAsync() =>
        May(Role.Quality) && (await rank.RunAsync(Asked, Known, Code, HttpContext.RequestAborted)).Answer is { } answer
            ? File(Encoding.UTF8.GetBytes(Csv.Of(answer.Items)), "text/csv", $"causes-{answer.Stage}.csv")
            : Forbid();

    /// <summary>This question with a level chosen.</summary>
    public string PartsOf(string factor, string level) =>
        Kept("/quality/causes", [], ("characteristic", Known), ("code", Code), ("factor", factor), ("level", level)) + "#parts";

    /// <summary>The characteristic, unless it was left over from another stage.</summary>
    private string? Known => Characteristics.Count == 0 || Characteristics.Any(c => c.Name == Characteristic) ? Characteristic : null;
}
