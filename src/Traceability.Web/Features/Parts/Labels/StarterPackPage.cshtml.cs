using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Documents.Labels;
using Traceability.Domain.Codes;
using Traceability.Domain.Records;
using Traceability.Domain.Scanning;
using Traceability.Web.Features.Shared;
using Traceability.Web.Features.Station;

namespace Traceability.Web.Features.Parts.Labels;

/// <summary>
/// Puts together what a new bench needs on paper: the action sheet, the station's label, the badges of who works there and the labels of
/// the carriers, as one file to print and cut. Badges are on it, so it is for who gives them out.
/// </summary>
[Authorize(Roles = nameof(Role.Lead))]
public sealed class StarterPackPage(LabelQuery query, IStringLocalizer<StationTexts> texts) : WorkshopPage
{
    private const int Most = 200;

    private static readonly string[] Kinds = ["stations", "badges", "carriers"];

    /// <summary>What may be chosen, by kind.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<LabelLine>> Lines { get; private set; } =
        new Dictionary<string, IReadOnlyList<LabelLine>>();

    /// <summary>True when the pack was asked for without a station.</summary>
    public bool NoneChosen { get; private set; }

    public async Task OnGetAsync()
    {
        var lines = new Dictionary<string, IReadOnlyList<LabelLine>>();
        foreach (var kind in Kinds)
        {
            lines[kind] = await query.FindAsync(kind, null, null, HttpContext.RequestAborted);
        }

        Lines = lines;
    }

    public async Task<IActionResult> OnGetPackAsync(string[] station, string[] badge, string[] carrier)
    {
        if (station.Length == 0)
        {
            NoneChosen = true;
            await OnGetAsync();
            return Page();
        }

        var labels = new List<StarterLabels>();
        foreach (var (kind, codes) in new[] { ("stations", station), ("badges", badge), ("carriers", carrier) })
        {
            var lines = codes.Length == 0 ? [] : await query.FindAsync(kind, null, [.. codes.Take(Most)], HttpContext.RequestAborted);
            labels.Add(new([.. lines.Select(l => new LabelText(l.Code.Text, l.Title, l.Detail))], LabelQuery.FormatOf(kind)));
        }

        var pdf = StarterPack.Render(
            texts["Pack.File", string.Join(", ", station)],
            texts["Sheet.Title"],
            texts["Sheet.Subtitle"],
            [.. StationActions.All.Select(LabelOf)],
            labels
        );
        return File(pdf, "application/pdf");
    }

    private LabelText LabelOf(StationAction action) =>
        new(PrintedCode.For(CodeKind.Action, action.Word()).Text, texts[$"Action.{action}"], texts[$"ActionMeaning.{action}"]);
}
