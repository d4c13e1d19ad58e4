using System.Globalization;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Carriers;

/// <summary>The jigs, trays and tins, what lies in them, and the form for the next.</summary>
[Authorize(Roles = $"{nameof(Role.Lead)},{nameof(Role.Builder)},{nameof(Role.Quality)}")]
public sealed class CarriersPage(ListCarriers carriers, AddCarriers add, IStringLocalizer<DeskTexts> texts, Writes writes)
    : DeskPage(writes)
{
    private static readonly Role[] Adders = [Role.Lead, Role.Builder];

    public IReadOnlyList<ListCarriers.CarrierAnswer> All { get; private set; } = [];

    public bool MayAdd => May(Adders);

    public bool MayTakeBack => May(Role.Lead, Role.Quality);

    public async Task OnGetAsync() => All = await carriers.AllAsync(true, HttpContext.RequestAborted);

    public async Task<IActionResult> OnPostAsync(string? code, string? kind, string? count)
    {
        var recorded = int.TryParse(count ?? "1", NumberStyles.None, CultureInfo.InvariantCulture, out var many)
            ? await RecordAsync(Adders, c => add.RunAsync(new(code ?? "", kind, many), Actor.PersonId, c))
            : Refuse(Refusal.Invalid("count", SetupSentences.CountOfCarriers(200)));
        if (recorded)
        {
            Done = texts["Carriers.Added", string.Join(", ", Recorded<AddCarriers.Output>().Codes)];
            return LocalRedirect("/setup/carriers");
        }

        await OnGetAsync();
        return Page();
    }
}
