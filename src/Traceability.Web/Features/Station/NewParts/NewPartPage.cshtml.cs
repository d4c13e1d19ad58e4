using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Codes;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Station.NewParts;

/// <summary>Registers a part at a page; afterwards it can be labelled and taken up.</summary>
[Authorize(Roles = nameof(Role.Builder))]
public sealed class NewPartPage(
    RegisterPart use,
    Writes writes,
    WorkshopContext db,
    RouteShelf shelf,
    WorkshopCalendar calendar,
    IStringLocalizer<StationTexts> texts
) : WorkshopPage
{
    /// <summary>The routes that a part may start on.</summary>
    public IReadOnlyList<Domain.Routes.Route> Routes { get; private set; } = [];

    [BindProperty]
    public string? What { get; set; }

    [BindProperty]
    public string? Serial { get; set; }

    [BindProperty]
    public string? Carrier { get; set; }

    /// <summary>The part that was registered just now.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Made { get; set; }

    public Task OnGetAsync() => LoadAsync();

    public async Task<IActionResult> OnPostAsync()
    {
        var written = await writes.RunPageAsync(
            Key,
            async cancellation =>
                ReadCarrier(out var carrier) is { } bad ? bad
                : What?.Split('/') is [var model, var kind]
                    ? await use.RunAsync(new(kind, model, Given(Serial), carrier), Actor, cancellation)
                : Refusal.Invalid("kind", texts["NewPart.Missing"])
        );
        if (Took(written))
        {
            return LocalRedirect("/parts/new?made=" + Uri.EscapeDataString(AnswerOf<PartAnswer>(written).Serial));
        }

        Made = null;
        await LoadAsync();
        return Page();
    }

    private async Task LoadAsync() =>
        Routes = [
            .. (await shelf.AllOfferedAsync(db, calendar.DayOf(writes.Now), HttpContext.RequestAborted)).Where(r =>
                r.Kind != PartKinds.FilmLot
            ),
        ];

    private Refusal? ReadCarrier(out string? carrier)
    {
        carrier = Given(Carrier);
        switch (PrintedCode.Read(Carrier))
        {
            case CodeReading.Good { Code: { Kind: CodeKind.Carrier } code }:
                carrier = code.Id;
                return null;
            case CodeReading.Good:
                return Refusal.Invalid("carrier", texts["NewPart.NotACarrier"]);
            case CodeReading.WrongCheck:
                return Refusal.Invalid("carrier", texts["NewPart.Misread"]);
            default:
                return null;
        }
    }

    private static string? Given(string? typed) => string.IsNullOrWhiteSpace(typed) ? null : typed.Trim();
}
