using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages;
using Traceability.Domain.Stages.InsulationTest;
using Traceability.Domain.Values;

namespace Traceability.Domain.Work.BenchWork;

/// <summary>A value for a characteristic, as it was entered; with its own time where that was stated.</summary>
public sealed record EnteredValue(string Characteristic, EnteredDecimal Number, DateTimeOffset? At = null);

/// <summary>Takes readings into the attempt now open.</summary>
public static partial class Readings
{
    /// <summary>
    /// Leads to one reading each, judged against the limits of the part's route. All or none are taken. The context says who takes them.
    /// </summary>
    public static Decision<IReadOnlyList<Reading>> Take(
        Dossier dossier,
        Guid attemptId,
        IReadOnlyList<EnteredValue> values,
        ReadingSource source,
        GateContext context,
        Stamp stamp
    )
    {
        if (!WhileOpen.Find(dossier, attemptId, context, out var open, out var stage, out var refusal))
        {
            return refusal;
        }

        foreach (var value in values)
        {
            if (ProblemWith(dossier, open, stage, value) is { } problem)
            {
                return problem;
            }
        }

        if (values.GroupBy(v => v.Characteristic).FirstOrDefault(g => g.Count() > 1) is { } twice)
        {
            return Refusal.Invalid("characteristic", RefusalTexts.IsThereMoreThanOnce(twice.Key, twice.Count()));
        }

        List<Reading> readings =
        [
            .. values.Select(v =>
                Take(
                    open,
                    stage.Characteristic(v.Characteristic)!,
                    v.Number,
                    source,
                    v.At is { } own ? stamp with { OccurredAt = own } : stamp
                )
            ),
        ];
        return Decision.Accept<IReadOnlyList<Reading>>(readings, readings);
    }

    private static Refusal? ProblemWith(Dossier dossier, AttemptView open, Stage stage, EnteredValue value) =>
        stage.Characteristic(value.Characteristic) switch
        {
            null => Refusal.Invalid(
                "characteristic",
                RefusalTexts.HasNoCharacteristic(
                    stage.Title,
                    value.Characteristic,
                    string.Join(", ", stage.Characteristics.Where(c => c.Entered).Select(c => c.Name))
                )
            ),
            { Entered: false } => Refusal.Invalid("characteristic", RefusalTexts.IsComputedNotEntered(value.Characteristic)),
            { Upper: not null } c when value.Number.IsGreaterThan => Refusal.Invalid(
                "value",
                RefusalTexts.BoundShowsNothingOfAtMost(value.Number.Digits, c.Name, c.Upper, c.Unit)
            ),
            { } c when VoltageProblem(dossier, stage, value) is { } tooHigh => Refusal.Conflict(
                RefusalTexts.VoltageIsNotTaken(c.Label, tooHigh)
            ),
            _ when open.Reading(value.Characteristic) is { } taken => Refusal.Conflict(
                RefusalTexts.WasReadAlready(value.Characteristic, dossier.Part.Serial, taken.Digits, taken.Reading.Id),
                RefusalCode.DuplicateReading
            ),
            _ => null,
        };

    // What a voltage is put between is said by the stage; only of one that says nothing is its method asked.
    private static string? VoltageProblem(Dossier dossier, Stage stage, EnteredValue value) =>
        PermittedVoltage
            .AcrossTheGap(stage, stage.Parameters.Terminals is not { Count: > 0 } && StageMethods.TestWithVoltage(stage))
            .Contains(value.Characteristic)
            ? PermittedVoltage.At(stage, name => dossier.CountingReading(name)?.Value).ProblemWith(value.Number.Value)
            : null;

    private static Reading Take(AttemptView open, Characteristic c, EnteredDecimal number, ReadingSource source, Stamp stamp) =>
        new(
            stamp.NewId(),
            open.Attempt.PartId,
            open.Id,
            c.Name,
            number.Value,
            number.Digits,
            c.Unit,
            c.Nominal,
            c.Lower,
            c.Upper,
            c.IsMetBy(number.Value),
            source,
            null,
            null,
            null,
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        )
        {
            ExpandedUncertainty = c.ExpandedUncertainty,
            Guarded = c.Guarded ? true : null,
        };
}
