using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Records;
using Traceability.Domain.Work.Studies;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.GaugeStudies;

/// <summary>
/// One study: the next reading, asked for cell by cell so that typing and Enter are enough, and the result with how it was computed.
/// </summary>
[Authorize(Roles = $"{nameof(Role.Quality)},{nameof(Role.Lead)},{nameof(Role.Builder)}")]
public sealed class GaugeStudyPage(DesignGaugeStudy studies, Writes writes) : DeskPage(writes)
{
    [FromRoute]
    public string Number { get; set; } = "";

    public StudyView View { get; private set; } = null!;

    public StudyAnswer Study { get; private set; } = null!;

    /// <summary>The cell to be measured next; null when all are filled.</summary>
    public StudyCell? Next { get; private set; }

    public bool MayMeasure => May(Role.Quality, Role.Builder);

    public async Task<IActionResult> OnGetAsync() => await LoadAsync() ? Page() : NotFound();

    public async Task<IActionResult> OnPostAsync(string? part, string? person, int trial, string? value, string? instrument, string? reason)
    {
        var input = new DesignGaugeStudy.ReadingInput(part ?? "", person ?? "", trial, new(value ?? ""), instrument, reason);
        return await RecordAsync([Role.Quality, Role.Builder], c => studies.TakeAsync(Number, [input], Actor, c))
                ? RedirectToPage(new { Number })
            : await LoadAsync() ? Page()
            : NotFound();
    }

    private async Task<bool> LoadAsync()
    {
        if (await studies.FindAsync(Number, HttpContext.RequestAborted) is not [var view])
        {
            return false;
        }

        (View, Study, Next) = (view, StudyAnswer.Of(view), view.Missing.Count == 0 ? null : view.Missing[0]);
        return true;
    }
}
