using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Instruments;

/// <summary>Corrects a calibration or a check that was entered wrong; what was entered stands in the form.</summary>
[Authorize(Roles = $"{nameof(Role.Lead)},{nameof(Role.Quality)}")]
public sealed class CorrectProofPage(
    InstrumentQuery query,
    CorrectCalibration correctCalibration,
    CorrectCheck correctCheck,
    IStringLocalizer<DeskTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    private static readonly Role[] Correctors = [Role.Lead, Role.Quality];

    [FromRoute]
    public string Code { get; set; } = "";

    [FromRoute]
    public Guid Id { get; set; }

    public Instrument Instrument { get; private set; } = null!;

    /// <summary>The calibration to be corrected; null when it is a check.</summary>
    public Calibration? Calibration { get; private set; }

    /// <summary>The check to be corrected; null when it is a calibration.</summary>
    public InstrumentCheck? Check { get; private set; }

    public async Task<IActionResult> OnGetAsync() => await LoadAsync() ? Page() : NotFound();

    public async Task<IActionResult> OnPostCalibrationAsync(
        DateOnly? calibratedOn,
        DateOnly? dueOn,
        string? reference,
        string? outcome,
        string? note,
        string? reason
    )
    {
        var (constants, wrong) = InstrumentPage.ReadConstants(Request.Form);
        wrong ??= calibratedOn is null || dueOn is null ? Refusal.Invalid("calibratedOn", SetupSentences.SayWhenItWasCalibrated) : null;
        return await AnswerAsync(
            wrong is not null
                ? Refuse(wrong)
                : await RecordAsync(
                    Correctors,
                    c =>
                        correctCalibration.RunAsync(
                            Code,
                            Id,
                            new(calibratedOn!.Value, dueOn!.Value, reference ?? "", reason ?? "", outcome != "failed", note, constants),
                            Actor,
                            c
                        )
                )
        );
    }

    public async Task<IActionResult> OnPostCheckAsync(string? value, string? outcome, string? note, string? reason) =>
        await AnswerAsync(
            await RecordAsync(
                Correctors,
                c =>
                    correctCheck.RunAsync(
                        Code,
                        Id,
                        new(reason ?? "", value is null ? null : new(value), outcome is null ? null : outcome == "passed", note),
                        Actor,
                        c
                    )
            )
        );

    private async Task<IActionResult> AnswerAsync(bool recorded)
    {
        if (recorded)
        {
            Done = texts["Instrument.Corrected"];
            return LocalRedirect($"/instruments/{Uri.EscapeDataString(Code.Trim().ToUpperInvariant())}");
        }

        return await LoadAsync() ? Page() : NotFound();
    }

    private async Task<bool> LoadAsync()
    {
        if (await query.FindAsync([Code.Trim().ToUpperInvariant()], HttpContext.RequestAborted) is not [var found])
        {
            return false;
        }

        (Instrument, Code) = (found.Instrument, found.Instrument.Code);
        Calibration = found.Calibrations.FirstOrDefault(c => c.Id == Id);
        Check = found.Checks.FirstOrDefault(c => c.Id == Id);
        return Calibration is not null || Check is not null || Refusal is not null;
    }
}
