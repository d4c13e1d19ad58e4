using System.Globalization;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Carriers;

/// <summary>The jigs, trays and tins, what lies in them, and the form for the next.</summary>
[Authorize(Roles = $"{nameof(Role.Lead)},{nameof(Role.Builder)},{nameof(Role.Quality)}")]
public sealed class CarriersPage(ListCarriers carriers, CarrierRow add, IStringLocalizer<DeskTexts> texts, Writes writes) : DeskPage(writes)
{
    private static readonly Role[] Adders = [Role.Lead];

    public IReadOnlyList<ListCarriers.CarrierAnswer> All { get; private set; } = [];

    public bool MayAdd => May(Adders);

    public bool MayTakeBack => May(Role.Lead, Role.Quality);

    public async Task OnGetAsync() => All = await carriers.AllAsync(true, HttpContext.RequestAborted);

    public async Task<IActionResult> OnPostAsync(string? code, string? kind, string? count)
    {
        int? many = int.TryParse(count ?? "1", NumberStyles.None, CultureInfo.InvariantCulture, out var read) ? read : null;
        var recorded = await RecordAsync(Adders, c => add.RunAsync(code ?? "", kind, many, Actor.PersonId, c));
        if (recorded)
        {
            Done = texts["Carriers.Added", string.Join(", ", Recorded<CarrierRow.Output>().Codes)];
            return LocalRedirect("/setup/carriers");
        }

        await OnGetAsync();
        return Page();
    }
}
