using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.Holds;

/// <summary>Puts a lot, a part or an instrument on hold, after showing what that stops.</summary>
[Authorize(Roles = nameof(Role.Quality))]
public sealed class NewHoldPage(PreviewHold previews, PutHold put, IStringLocalizer<DeskTexts> texts, Writes writes) : DeskPage(writes)
{
    [BindProperty(SupportsGet = true)]
    public string? Lot { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Part { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Instrument { get; set; }

    /// <summary>What the hold would stop; null until something is named that exists.</summary>
    public PreviewHold.Output? Preview { get; private set; }

    /// <summary>What was named, whether it exists or not.</summary>
    public string? Named => Lot ?? Part ?? Instrument;

    public Task OnGetAsync() => LoadAsync();

    public async Task<IActionResult> OnPostAsync(string? reason)
    {
        if (await RecordAsync([Role.Quality], c => put.RunAsync(new(reason ?? "", Lot, Part, Instrument), Actor, c)))
        {
            Done = texts["Holds.PutNow", Named!.Trim().ToUpperInvariant()];
            return LocalRedirect("/holds");
        }

        await LoadAsync();
        return Page();
    }

    private async Task LoadAsync()
    {
        var cancellation = HttpContext.RequestAborted;
        Preview = this switch
        {
            { Lot: { } lot } => await previews.OfLotAsync(lot, cancellation),
            { Part: { } part } => await previews.OfPartAsync(part, cancellation),
            { Instrument: { } instrument } => await previews.OfInstrumentAsync(instrument, cancellation),
            _ => null,
        };
    }
}
