using System.Globalization;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Web.Features.Access;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.Concessions;

/// <summary>Concessions for parts to come, what is left of each, and the form to give another.</summary>
[Authorize(Roles = nameof(Role.Quality))]
public sealed class ConcessionsPage(
    ListConcessions list,
    GiveConcession give,
    PinSignature pins,
    IStringLocalizer<DeskTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    public IReadOnlyList<ConcessionRow> Rows { get; private set; } = [];

    public async Task OnGetAsync() => Rows = await list.RunAsync(HttpContext.RequestAborted);

    public async Task<IActionResult> OnPostAsync(
        string? reason,
        string? lot,
        string? code,
        string? stage,
        string? mostParts,
        DateOnly? validUntil
    )
    {
        int? most = null;
        var unreadable =
            !string.IsNullOrWhiteSpace(mostParts)
            && !(int.TryParse(mostParts, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && (most = number) is not null);
        var pin = Request.Form[PinSignature.Field].ToString();
        var given =
            unreadable ? Refuse(Refusal.Invalid("mostParts", texts["Concessions.WholeNumber"]))
            : await pins.UnprovenAsync(Actor, pin, HttpContext.RequestAborted) is { } unproven ? Refuse(unproven)
            : await RecordAsync([Role.Quality], c => give.RunAsync(new(reason ?? "", pin, lot, code, stage, most, validUntil), Actor, c));
        if (given)
        {
            Done = texts["Concessions.Given", Recorded<ConcessionRow>().Number];
            return LocalRedirect("/concessions");
        }

        await OnGetAsync();
        return Page();
    }
}
