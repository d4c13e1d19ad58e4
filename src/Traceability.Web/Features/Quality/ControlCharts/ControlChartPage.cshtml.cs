using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Records;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Features.Quality.Pareto;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.ControlCharts;

/// <summary>Charts of one characteristic, and what fails most often.</summary>
public sealed class ControlChartPage(DrawControlChart draw, ReadPareto pareto, AnalysisFilters filters, Writes writes)
    : AnalysisPage(filters, writes)
{
    public ControlChartAnswer? Answer { get; private set; }

    public ParetoAnswer? Pareto { get; private set; }

    public string? Characteristic => AnalysisQuery.Text(Request, "characteristic");

    public string? By => AnalysisQuery.Text(Request, "by");

    /// <summary>A kind of lot whose numbers the values are told apart by.</summary>
    public string? Lots => AnalysisQuery.Text(Request, "lots");

    public IReadOnlyList<Domain.Routes.Characteristic> Characteristics { get; private set; } = [];

    /// <summary>Kinds of lot that the routes fit.</summary>
    public IReadOnlyList<string> LotKinds { get; private set; } = [];

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
        LotKinds = [.. Stages.SelectMany(s => s.Stage.Slots).Select(s => s.LotKind).OfType<string>().Distinct().Order()];
        (Pareto, var refusal) = await pareto.RunAsync(Asked, HttpContext.RequestAborted);
        if (refusal is null && Asked.Stage is not null && Chosen is { } characteristic)
        {
            (Answer, refusal) = await draw.RunAsync(Asked, new(characteristic, By, Lots), HttpContext.RequestAborted);
        }

        return Shown(refusal);
    }

    /// <summary>The points as a file.</summary>
    public async Task<IActionResult> OnGetCsvAsync() =>
        May(Role.Quality) && (await draw.RunAsync(Asked, new(Characteristic, By, Lots), HttpContext.RequestAborted)).Answer is { } answer
            ? File(Encoding.UTF8.GetBytes(Csv.Of(answer.Points)), "text/csv", $"chart-{answer.Stage}-{answer.Characteristic}.csv")
            : Forbid();

    /// <summary>The points as marks; those that complete a rule or do not meet their limits are marked.</summary>
    public IReadOnlyList<Mark> Individuals(Func<ChartedPoint, string> words) =>
        [.. Answer!.Points.Select(p => new Mark(p.Number, p.Value, p.Serial, words(p), p.Rules.Count > 0 || !p.Met))];

    /// <summary>The moving ranges; those beyond their limit are marked.</summary>
    public IReadOnlyList<Mark> Ranges =>
        [
            .. Answer!
                .Points.Where(p => p.MovingRange is not null)
                .Select(p => new Mark(
                    p.Number,
                    p.MovingRange!.Value,
                    p.Serial,
                    Words(p.Serial, p.MovingRange.Value),
                    p.MovingRange > Answer.RangeLimits!.Value.Upper
                )),
        ];

    /// <summary>The weighted averages; those beyond their limits are marked.</summary>
    public IReadOnlyList<Mark> Averages =>
        [.. Answer!.Points.Select(p => new Mark(p.Number, p.Ewma, p.Serial, Words(p.Serial, p.Ewma), p.EwmaBeyond))];

    /// <summary>Means or ranges of the subgroups; each leads to the first part of its group.</summary>
    public static IReadOnlyList<Mark> OfGroups(Subgroups groups, IReadOnlyList<double> values, IReadOnlyList<int> beyond) =>
        [.. values.Select((v, i) => new Mark(i + 1, v, groups.FirstSerials[i], Words(groups.Names[i], v), beyond.Contains(i)))];

    private static string Words(string name, double value) => string.Create(CultureInfo.InvariantCulture, $"{name}: {value:G5}");

    /// <summary>The characteristic asked for; the first with a limit when it belongs to another stage or none was chosen.</summary>
    private string? Chosen =>
        Characteristics.Count == 0 ? Characteristic
        : Characteristics.Any(c => c.Name == Characteristic) ? Characteristic
        : (Characteristics.FirstOrDefault(c => c.Lower is not null || c.Upper is not null) ?? Characteristics[0]).Name;
}
