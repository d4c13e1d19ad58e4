using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.Holds;

/// <summary>Holds that stop something now; or those lifted.</summary>
public sealed class HoldsPage(ListHolds list, ReleaseHold release, PreviewHold previews, IStringLocalizer<DeskTexts> texts, Writes writes)
    : DeskPage(writes)
{
    /// <summary>True for those that were lifted.</summary>
    [BindProperty(SupportsGet = true)]
    public bool Lifted { get; set; }

    public IReadOnlyList<HoldAnswer> Holds { get; private set; } = [];

    /// <summary>What each open hold stops now, by its id.</summary>
    public IReadOnlyDictionary<Guid, PreviewHold.Output> Stops { get; private set; } = new Dictionary<Guid, PreviewHold.Output>();

    public Paging Paging { get; private set; } = null!;

    public Task OnGetAsync() => LoadAsync();

    public async Task<IActionResult> OnPostLiftAsync(Guid id, string? reason)
    {
        if (await RecordAsync([Role.Quality], c => release.RunAsync(id, new(reason ?? ""), Actor, c)))
        {
            Done = texts["Holds.LiftedNow"];
            return LocalRedirect("/holds");
        }

        await LoadAsync();
        return Page();
    }

    private Task<PreviewHold.Output?> StopsAsync(HoldAnswer hold) =>
        hold switch
        {
            { Lot: { } lot } => previews.OfLotAsync(lot, HttpContext.RequestAborted),
            { Part: { } part } => previews.OfPartAsync(part, HttpContext.RequestAborted),
            _ => previews.OfInstrumentAsync(hold.Instrument!, HttpContext.RequestAborted),
        };

    private async Task LoadAsync()
    {
        var page = await list.RunAsync(!Lifted, await Paging.AskedAsync(HttpContext), HttpContext.RequestAborted);
        (Holds, Paging) = (page.Items, Paging.Of(Request, page.Next));
        var stops = new Dictionary<Guid, PreviewHold.Output>();
        foreach (var hold in Holds.Where(h => h.Open))
        {
            if (await StopsAsync(hold) is { } stopped)
            {
                stops[hold.Id] = stopped;
            }
        }

        Stops = stops;
    }
}
