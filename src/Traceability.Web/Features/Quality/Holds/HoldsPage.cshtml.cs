using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.Holds;

/// <summary>Holds that stop something now; or those lifted.</summary>
public sealed class HoldsPage(ListHolds list, LiftHold lift, IStringLocalizer<DeskTexts> texts, Writes writes) : DeskPage(writes)
{
    /// <summary>True for those that were lifted.</summary>
    [BindProperty(SupportsGet = true)]
    public bool Lifted { get; set; }

    public IReadOnlyList<HoldAnswer> Holds { get; private set; } = [];

    public Paging Paging { get; private set; } = null!;

    public Task OnGetAsync() => LoadAsync();

    public async Task<IActionResult> OnPostLiftAsync(Guid id, string? reason)
    {
        if (await RecordAsync([Role.Quality], c => lift.RunAsync(id, new(reason ?? ""), Actor, c)))
        {
            Done = texts["Holds.LiftedNow"];
            return LocalRedirect("/holds");
        }

        await LoadAsync();
        return Page();
    }

    private async Task LoadAsync()
    {
        var page = await list.RunAsync(!Lifted, await Paging.AskedAsync(HttpContext), HttpContext.RequestAborted);
        (Holds, Paging) = (page.Items, Paging.Of(Request, page.Next));
    }
}
