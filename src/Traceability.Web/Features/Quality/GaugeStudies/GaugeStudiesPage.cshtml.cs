using System.Globalization;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Records;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.GaugeStudies;

/// <summary>Every gauge study, and the form to design another.</summary>
[Authorize(Roles = $"{nameof(Role.Quality)},{nameof(Role.Lead)},{nameof(Role.Builder)}")]
public sealed class GaugeStudiesPage(ListGaugeStudies list, DesignGaugeStudy design, Writes writes) : DeskPage(writes)
{
    public IReadOnlyList<StudyRow> Rows { get; private set; } = [];

    public async Task OnGetAsync() => Rows = await list.RunAsync(HttpContext.RequestAborted);

    /// <summary>Pieces and people come one a line.</summary>
    public async Task<IActionResult> OnPostAsync(
        string? title,
        string? characteristic,
        string? unit,
        string? instrumentKind,
        string? parts,
        string? people,
        string? repeats,
        string? lower,
        string? upper
    )
    {
        var numbers = new NumberReader();
        var input = new DesignGaugeStudy.Input(
            title ?? "",
            characteristic ?? "",
            unit ?? "",
            instrumentKind ?? "",
            Lines(parts),
            Lines(people),
            int.TryParse(repeats, NumberStyles.None, CultureInfo.InvariantCulture, out var times) ? times : 0,
            numbers.May(nameof(lower), lower),
            numbers.May(nameof(upper), upper)
        );
        if (numbers.Refusal is { } wrong ? Refuse(wrong) : await RecordAsync([Role.Quality], c => design.RunAsync(input, Actor, c)))
        {
            return LocalRedirect($"/gauge-studies/{Recorded<StudyRow>().Number}");
        }

        await OnGetAsync();
        return Page();
    }

    private static string[] Lines(string? text) =>
        (text ?? "").Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}
