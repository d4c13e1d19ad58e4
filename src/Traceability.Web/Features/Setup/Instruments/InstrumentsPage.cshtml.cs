using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Instruments;

/// <summary>Every instrument with its calibration and today's check, those that need something first.</summary>
public sealed class InstrumentsPage(
    InstrumentQuery query,
    AddInstrument add,
    WorkshopCalendar calendar,
    IStringLocalizer<DeskTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    /// <summary>Days before its end at which a calibration is called soon due; common practice, no source.</summary>
    public const int SoonDays = 30;

    public IReadOnlyList<InstrumentStanding> Instruments { get; private set; } = [];

    public DateOnly Today => calendar.DayOf(Now);

    public Task OnGetAsync() => LoadAsync();

    public async Task<IActionResult> OnPostAddAsync(
        string? code,
        string? kind,
        string? title,
        string? checkNominal,
        string? checkTolerance,
        string? checkUnit
    )
    {
        var numbers = new NumberReader();
        var input = new AddInstrument.Input(
            code ?? "",
            kind ?? "",
            title ?? "",
            numbers.May(nameof(checkNominal), checkNominal),
            numbers.May(nameof(checkTolerance), checkTolerance),
            checkUnit
        );
        if (numbers.Refusal is { } wrong ? Refuse(wrong) : await RecordAsync([Role.Lead], c => add.RunAsync(input, Actor.PersonId, c)))
        {
            Done = texts["Instruments.Added", input.Code.Trim().ToUpperInvariant()];
            return LocalRedirect($"/instruments/{Uri.EscapeDataString(input.Code.Trim().ToUpperInvariant())}");
        }

        await LoadAsync();
        return Page();
    }

    /// <summary>The word for where it stands today.</summary>
    public string StateOf(InstrumentStanding i) => Words.Of(i.StateOn(Today, calendar));

    /// <summary>Its last check of today, if there was one.</summary>
    public InstrumentCheck? CheckOf(InstrumentStanding i) => i.CheckOn(Today, calendar);

    /// <summary>True when its calibration ends within the month, or ended.</summary>
    public bool SoonDue(InstrumentStanding i) => i.LatestCalibration(Today) is not { } c || c.DueOn <= Today.AddDays(SoonDays);

    private async Task LoadAsync() =>
        Instruments = [
            .. (await query.FindAsync(null, HttpContext.RequestAborted))
                .OrderBy(i => i.Retired is not null)
                .ThenBy(i => i.LatestCalibration(Today)?.DueOn ?? DateOnly.MinValue)
                .ThenBy(i => i.Instrument.Code, StringComparer.Ordinal),
        ];
}
