using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Instruments;

/// <summary>One instrument: where it stands, its calibrations, checks and holds; and the forms to record the next.</summary>
public sealed class InstrumentPage(
    InstrumentQuery query,
    RecordCalibration calibrations,
    RecordCheck checks,
    InstrumentPast past,
    WorkshopCalendar calendar,
    IStringLocalizer<DeskTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    private static readonly Role[] Calibrators = [Role.Lead, Role.Quality],
        Checkers = [Role.Builder, Role.Quality, Role.Lead];

    [FromRoute]
    public string Code { get; set; } = "";

    public InstrumentStanding Standing { get; private set; } = null!;

    public IReadOnlyList<InstrumentPast.Line> Lines { get; private set; } = [];

    public DateOnly Today => calendar.DayOf(Now);

    public string State => Words.Of(Standing.StateOn(Today, calendar));

    public bool MayCalibrate => May(Calibrators);

    /// <summary>True when the day on which a calibration is due has to be confirmed.</summary>
    public bool AsksAgain => RefusedIn("calibrate")?.Errors.ContainsKey("sure") == true;

    public bool MayCheck => May(Checkers);

    public async Task<IActionResult> OnGetAsync() => await LoadAsync() ? Page() : NotFound();

    public async Task<IActionResult> OnPostCalibrateAsync(
        DateOnly? calibratedOn,
        DateOnly? dueOn,
        string? reference,
        string? outcome,
        string? note
    )
    {
        var (constants, wrong) = ReadConstants(Request.Form);
        wrong ??=
            dueOn > calibratedOn?.AddYears(RecordCalibration.UsualYears)
            && dueOn <= calibratedOn?.AddYears(RecordCalibration.MostYears)
            && Request.Form["sure"] != "true"
                ? Refusal.Invalid(
                    "sure",
                    SetupSentences.CalibrationIsDueFarAhead(WorkshopCalendar.Say(dueOn!.Value), RecordCalibration.UsualYears)
                )
                : null;
        return await AnswerAsync(
            (
                wrong
                ?? (calibratedOn is null || dueOn is null ? Refusal.Invalid("calibratedOn", SetupSentences.SayWhenItWasCalibrated) : null)
            )
                is { } refusal
                ? Refuse(refusal)
                : await RecordAsync(
                    Calibrators,
                    c =>
                        calibrations.RunAsync(
                            Code,
                            new(calibratedOn!.Value, dueOn!.Value, reference ?? "", outcome != "failed", note, Constants: constants),
                            Actor,
                            c
                        )
                ),
            texts["Instrument.Calibrated"]
        );
    }

    /// <summary>The constants that were filled in; a field left empty states none.</summary>
    internal static (Dictionary<string, decimal> Constants, Refusal? Wrong) ReadConstants(IFormCollection form)
    {
        var constants = new Dictionary<string, decimal>();
        foreach (var name in CalibrationConstants.All.Keys)
        {
            if (form[name].ToString() is not { Length: > 0 } typed)
            {
                continue;
            }

            if (!EnteredDecimal.TryParse(typed, out var number, out var problem))
            {
                return (constants, Refusal.Invalid(name, problem));
            }

            constants[name] = number.Value;
        }

        return (constants, null);
    }

    public async Task<IActionResult> OnPostCheckAsync(string? value, string? outcome, string? note) =>
        await AnswerAsync(
            await RecordAsync(
                Checkers,
                c =>
                    checks.RunAsync(
                        Code,
                        new(value is null ? null : new(value), outcome is null ? null : outcome == "passed", note),
                        Actor,
                        c
                    )
            ),
            texts["Instrument.Checked"]
        );

    private async Task<IActionResult> AnswerAsync(bool recorded, string done)
    {
        if (recorded)
        {
            var output = Recorded<ProvenInstrument>();
            Done = output.Passed ? done : texts["Instrument.Failed", output.Because ?? ""];
            return RedirectToPage(new { Code });
        }

        return await LoadAsync() ? Page() : NotFound();
    }

    private async Task<bool> LoadAsync()
    {
        var cancellation = HttpContext.RequestAborted;
        if (await query.FindAsync([Code.Trim().ToUpperInvariant()], cancellation) is not [var found])
        {
            return false;
        }

        (Standing, Code) = (found, found.Instrument.Code);
        Lines = await past.RunAsync(found, cancellation);
        return true;
    }
}
