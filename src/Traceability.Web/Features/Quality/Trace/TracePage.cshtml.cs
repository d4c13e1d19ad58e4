using System.Text;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Web.Features.Access;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.Trace;

/// <summary>
/// From something in doubt to the exact list of what it touched; the list to print or export, and one button that holds all of it.
/// </summary>
[Authorize(Roles = $"{nameof(Role.Quality)},{nameof(Role.Service)}")]
public sealed class TracePage(
    TraceParts traces,
    HoldTraced hold,
    TracedHolds holds,
    LiftTracedHold lift,
    PinSignature pins,
    WorkshopCalendar calendar,
    IStringLocalizer<DeskTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    /// <summary>A list longer than this is cut on the page, which says so; the CSV is whole.</summary>
    public const int Most = HoldTraced.Most;

    [BindProperty(SupportsGet = true)]
    public string? What { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Code { get; set; }

    /// <summary>First day of the work in doubt.</summary>
    [BindProperty(SupportsGet = true)]
    public DateOnly? From { get; set; }

    /// <summary>Last day of the work in doubt.</summary>
    [BindProperty(SupportsGet = true)]
    public DateOnly? To { get; set; }

    /// <summary>The day at whose end the list is drawn up; today when it is not given.</summary>
    [BindProperty(SupportsGet = true)]
    public DateOnly? At { get; set; }

    public TraceParts.Output? Found { get; private set; }

    /// <summary>Why there is no list.</summary>
    public Refusal? NotFoundBecause { get; private set; }

    public TraceKind? Kind => TraceKinds.FromCode(What ?? "");

    /// <summary>What holding everything would touch.</summary>
    public IReadOnlyList<TracedPart> Touched => [.. (Found?.Items ?? []).Where(p => p.IsHeldWithAll)];

    /// <summary>What earlier decisions on this trace still hold.</summary>
    public IReadOnlyList<TracedHold> Held { get; private set; } = [];

    public bool MayHold => At is null && Found is { Next: null, Items.Count: > 0 } && May(Role.Quality);

    public Task OnGetAsync() => LoadAsync();

    /// <summary>The whole list, for other programs.</summary>
    public async Task<IActionResult> OnGetCsvAsync()
    {
        if (Asked is not { } ask)
        {
            return NotFound();
        }

        var (found, _) = await traces.RunAsync(ask, new(int.MaxValue - 1, null), HttpContext.RequestAborted);
        return found is null
            ? NotFound()
            : File(Encoding.UTF8.GetBytes(Csv.Of(found.Items)), "text/csv", $"trace-{found.What}-{found.Code}.csv");
    }

    public async Task<IActionResult> OnPostAsync(string? reason)
    {
        var pin = Request.Form[PinSignature.Field].ToString();
        var recorded =
            Asked is not { } ask ? Refuse(Refusal.Invalid("code", texts["Trace.Ask"]))
            : May(Role.Quality) && await pins.UnprovenAsync(Actor, pin, HttpContext.RequestAborted) is { } unproven ? Refuse(unproven)
            : await RecordAsync([Role.Quality], c => hold.RunAsync(new(ask.What, ask.Code, reason ?? "", pin, ask.From, ask.To), Actor, c));
        if (recorded)
        {
            var output = Recorded<HoldTraced.Output>();
            Done = texts["Trace.Held", output.Parts.Count, output.Lots.Count + (output.Instrument is null ? 0 : 1)];
            return LocalRedirect(Request.Path + Request.QueryString);
        }

        await LoadAsync();
        return Page();
    }

    /// <summary>Lifts everything that one decision held.</summary>
    public async Task<IActionResult> OnPostLiftAsync(Guid id, string? reason)
    {
        var pin = Request.Form[PinSignature.Field].ToString();
        var recorded =
            May(Role.Quality) && await pins.UnprovenAsync(Actor, pin, HttpContext.RequestAborted) is { } unproven
                ? Refuse(unproven)
                : await RecordAsync([Role.Quality], c => lift.RunAsync(id, new(reason ?? "", pin), Actor, c));
        if (recorded)
        {
            var output = Recorded<LiftTracedHold.Output>();
            Done = texts["Trace.Lifted", output.Parts.Count, output.Lots + (output.Instrument ? 1 : 0)];
            return LocalRedirect(Request.Path + QueryString.Create(Request.Query.Where(q => q.Key != "handler")));
        }

        await LoadAsync();
        return Page();
    }

    private TraceParts.Ask? Asked =>
        Kind is { } kind && !string.IsNullOrWhiteSpace(Code)
            ? new(
                kind,
                Code,
                From is { } from ? calendar.StartOf(from) : null,
                To is { } to ? calendar.EndOf(to) : null,
                At is { } at ? calendar.EndOf(at) : null
            )
            : null;

    private async Task LoadAsync()
    {
        if (Asked is { } ask)
        {
            (Found, NotFoundBecause) = await traces.RunAsync(ask, new(Most, null), HttpContext.RequestAborted);
            Held =
                Found is not null && May(Role.Quality)
                    ? [.. (await holds.OfAsync(ask.What, Found.Code, HttpContext.RequestAborted)).Where(h => h.Open)]
                    : [];
        }
    }
}
