using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Stations;

/// <summary>The benches and cabinets, and the form for the next.</summary>
[Authorize(Roles = nameof(Role.Lead))]
public sealed class StationsPage(ListStations stations, AddStation add, IStringLocalizer<DeskTexts> texts, Writes writes) : DeskPage(writes)
{
    public IReadOnlyList<ListStations.StationAnswer> All { get; private set; } = [];

    public async Task OnGetAsync() => All = await stations.AllAsync(true, HttpContext.RequestAborted);

    public async Task<IActionResult> OnPostAsync(string? code, string? title)
    {
        if (await RecordAsync([Role.Lead], c => add.RunAsync(new(code ?? "", title ?? ""), Actor.PersonId, c)))
        {
            Done = texts["Stations.Added", Recorded<ListStations.StationAnswer>().Code];
            return LocalRedirect("/setup/stations");
        }

        await OnGetAsync();
        return Page();
    }
}
