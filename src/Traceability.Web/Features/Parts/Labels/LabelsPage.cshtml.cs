using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Documents.Labels;
using Traceability.Domain.Records;
using Traceability.Web.Features.Shared;
using Traceability.Web.Features.Station;

namespace Traceability.Web.Features.Parts.Labels;

/// <summary>Chooses what to print labels for, and prints them. Badges are for those who give them out.</summary>
[Authorize(Roles = $"{nameof(Role.Builder)},{nameof(Role.Quality)},{nameof(Role.Lead)}")]
public sealed class LabelsPage(LabelQuery query, IStringLocalizer<StationTexts> texts) : WorkshopPage
{
    private const int MostOnOneSheet = 1000;

    /// <summary>What the labels are for.</summary>
    [BindProperty(SupportsGet = true)]
    public string Kind { get; set; } = "parts";

    /// <summary>Part of a code or name.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Find { get; set; }

    /// <summary>Serials, parted by commas, of parts whose labels are wanted: the list then holds these, chosen.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Parts { get; set; }

    public IReadOnlyList<LabelLine> Lines { get; private set; } = [];

    /// <summary>True when what is listed was asked for by name.</summary>
    public bool AreChosen { get; private set; }

    /// <summary>True when the sheet was asked for without choosing anything.</summary>
    public bool NoneChosen { get; private set; }

    /// <summary>The kinds that this person may print.</summary>
    public IEnumerable<string> Kinds => LabelQuery.Kinds.Where(k => k != "badges" || Actor.Is(Role.Lead));

    public async Task<IActionResult> OnGetAsync()
    {
        if (!Kinds.Contains(Kind))
        {
            return NotFound();
        }

        string[] wanted =
        [
            .. (Parts ?? "")
                .ToUpperInvariant()
                .Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
                .Take(MostOnOneSheet),
        ];
        Kind = wanted.Length > 0 ? "parts" : Kind;
        Lines = await query.FindAsync(Kind, Find, wanted.Length > 0 ? wanted : null, HttpContext.RequestAborted);
        AreChosen = wanted.Length > 0;
        return Page();
    }

    public async Task<IActionResult> OnGetSheetAsync(string[] code)
    {
        if (code.Length == 0 || !Kinds.Contains(Kind))
        {
            NoneChosen = true;
            return await OnGetAsync();
        }

        var lines = await query.FindAsync(Kind, null, [.. code.Take(MostOnOneSheet)], HttpContext.RequestAborted);
        var pdf = LabelSheet.Render(
            texts["Labels.Title"],
            [.. lines.Select(l => new LabelText(l.Code.Text, l.Title, l.Detail))],
            LabelQuery.FormatOf(Kind)
        );
        return File(pdf, "application/pdf");
    }
}
