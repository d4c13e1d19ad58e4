using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work.BenchWork;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Quality.Holds;
using Traceability.Web.Features.Quality.Nonconformities;
using Traceability.Web.Features.Shared;
using Traceability.Web.Features.Station.StageWork;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Parts.Life;

/// <summary>A part's life from top to bottom, and what may be done with it at a desk.</summary>
public sealed class PartPage(
    PartLife lives,
    WorkshopCalendar calendar,
    CorrectReading correct,
    RemoveFitting remove,
    RaiseNonconformity raise,
    ListHolds holds,
    WorkBench bench,
    IStringLocalizer<DeskTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    private static readonly Role[] Correctors = [Role.Builder, Role.Quality],
        Raisers = [Role.Builder, Role.Quality, Role.Service],
        Removers = [Role.Builder, Role.Service];

    [FromRoute]
    public string Serial { get; set; } = "";

    /// <summary>The last day that is shown; everything when it is not given.</summary>
    [BindProperty(SupportsGet = true)]
    public DateOnly? AsOf { get; set; }

    public PartLife.Output Life { get; private set; } = null!;

    /// <summary>Holds on the part itself, lifted ones too.</summary>
    public IReadOnlyList<HoldAnswer> Holds { get; private set; } = [];

    /// <summary>What the part is now.</summary>
    public StandingAnswer Standing { get; private set; } = null!;

    public bool MayCorrect => AsOf is null && May(Correctors);

    public bool MayRaise => AsOf is null && May(Raisers) && !Life.Dossier.Scrapped;

    public bool MayRemove => AsOf is null && May(Removers) && Life.Dossier.PresentFittings.Count > 0;

    /// <summary>True where the workshop works single-handed and a stage asks for somebody else than this person.</summary>
    public bool NeedsSecondSignIn => AsOf is null && May(Role.Builder, Role.Quality) && SecondSignIns.Needed(Life.Dossier, Actor).Count > 0;

    public bool MayHold => AsOf is null && May(Role.Quality);

    public async Task<IActionResult> OnGetAsync() =>
        await LoadAsync() is not { } serial ? NotFound()
        : serial == Serial ? Page()
        : RedirectToPage(new { serial, AsOf = AsOf?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture) });

    public async Task<IActionResult> OnPostCorrectAsync(Guid reading, string? value, string? reason) =>
        await AnswerAsync(
            await RecordAsync(Correctors, c => correct.RunAsync(reading, new(new(value ?? ""), reason ?? ""), Actor, c)),
            texts["Part.Corrected"],
            "readings"
        );

    public async Task<IActionResult> OnPostRaiseAsync(string? code, string? description) =>
        await AnswerAsync(
            await RecordAsync(Raisers, c => raise.RunAsync(Serial, new(code ?? "", description ?? ""), Actor, c)),
            texts["Part.Raised"],
            "nonconformities"
        );

    public async Task<IActionResult> OnPostRemoveAsync(string? position, string? reason) =>
        await AnswerAsync(
            await RecordAsync(Removers, c => remove.RunAsync(Serial, new(position ?? "", reason ?? ""), Actor, c)),
            texts["Part.Removed"],
            "made-of"
        );

    private async Task<IActionResult> AnswerAsync(bool recorded, string done, string section)
    {
        if (recorded)
        {
            Done = done;
            return RedirectToPage(null, null, new { Serial }, section);
        }

        return await LoadAsync() is null ? NotFound() : Page();
    }

    /// <summary>Reads the life; the serial of the part found, which is not what was asked for when that was a carrier.</summary>
    private async Task<string?> LoadAsync()
    {
        DateTimeOffset? end = AsOf is { } day ? EndOf(day) : null;
        if (await lives.RunAsync(Serial, end, Actor, HttpContext.RequestAborted) is not { } life)
        {
            return null;
        }

        Life = life;
        Holds = await holds.OfSubjectAsync(life.Dossier.Part.Id, HttpContext.RequestAborted);
        var part = life.Dossier.Part;
        Standing = bench.AnswerOf(life.Dossier).Standing;
        return part.Serial;
    }

    /// <summary>The last moment of a day in the workshop's zone.</summary>
    private DateTimeOffset EndOf(DateOnly day)
    {
        var midnight = day == DateOnly.MaxValue ? day.ToDateTime(TimeOnly.MinValue) : day.AddDays(1).ToDateTime(TimeOnly.MinValue);
        return new DateTimeOffset(midnight, calendar.Zone.GetUtcOffset(midnight)).ToUniversalTime().AddTicks(-10);
    }
}
