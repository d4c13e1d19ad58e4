using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Web.Features.Setup.Instruments;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Imports;

/// <summary>Instruments, each with its last calibration when the line says one.</summary>
public sealed class ImportInstruments(AddInstrument add, RecordCalibration calibrate, Writes writes)
    : ImportKind(
        "instruments",
        [
            new("code", true, "RB-1"),
            new("kind", true, "resonance-bench"),
            new("title", true, "Resonance bench 1"),
            new("checkNominal", false, "1000"),
            new("checkTolerance", false, "2"),
            new("checkUnit", false, "Hz"),
            new("calibratedOn", false, "2026-01-31"),
            new("dueOn", false, "2027-01-31"),
            new("reference", false, "CAL-2026-118"),
        ],
        Role.Lead,
        Role.Importer
    )
{
    internal override async Task<Refusal?> AddAsync(ImportLine line, Actor actor, CancellationToken cancellation)
    {
        var (calibratedOn, dueOn) = (line.DayOf("calibratedOn"), line.DayOf("dueOn"));
        var input = new AddInstrument.Input(
            line.Text("code"),
            line.Text("kind"),
            line.Text("title"),
            line.NumberOf("checkNominal"),
            line.NumberOf("checkTolerance"),
            line.May("checkUnit")
        );
        if ((await add.RunAsync(input, actor.PersonId, cancellation)).Refusal is { } refusal)
        {
            return refusal;
        }

        if (calibratedOn is null && dueOn is null && line.May("reference") is null)
        {
            return null;
        }

        if (calibratedOn is not { } day || dueOn is not { } due)
        {
            return Refusal.Invalid(calibratedOn is null ? "calibratedOn" : "dueOn", ImportSentences.CalibrationNeedsBothDays);
        }

        await writes.Book.SaveSoFarAsync(cancellation);
        return (await calibrate.RunAsync(input.Code, new(day, due, line.Text("reference")), actor, cancellation)).Refusal;
    }
}
