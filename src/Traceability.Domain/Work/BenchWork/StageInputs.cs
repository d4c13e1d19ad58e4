using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Work.BenchWork;

/// <summary>
/// The one place that makes what a stage's method is given from the facts: for closing, for judging anew after a correction, and for
/// recomputing what was stored. The same facts give the same input. A method sees of earlier stages and of fitted parts only what it says
/// it reads, so that what a correction reaches is known.
/// </summary>
public static class StageInputs
{
    /// <summary>The input of an attempt that ends, or ended, at <paramref name="endedAt"/>.</summary>
    public static StageInput Of(
        Dossier dossier,
        AttemptView attempt,
        Stage stage,
        IReadOnlyList<EvidenceFile> evidence,
        GateContext context,
        DateTimeOffset endedAt
    ) => Make(attempt, stage, evidence, context, endedAt, name => dossier.CountingReading(name)?.Value);

    /// <summary>
    /// The input of an attempt that ended, with every correction made since in the place of what it was judged on: the readings that
    /// counted then, and their values now.
    /// </summary>
    public static StageInput Anew(
        Dossier dossier,
        AttemptView attempt,
        Stage stage,
        IReadOnlyList<EvidenceFile> evidence,
        GateContext context
    )
    {
        var ending = attempt.Ending!;
        var corrected = dossier.CorrectedAsOf(ending.RecordedAt).Attempts.First(a => a.Id == attempt.Id);
        return Make(
            corrected,
            stage,
            evidence,
            context,
            ending.OccurredAt,
            name => dossier.ReadingThatCounted(ending.RecordedAt, name)?.Value
        );
    }

    private static StageInput Make(
        AttemptView attempt,
        Stage stage,
        IReadOnlyList<EvidenceFile> evidence,
        GateContext context,
        DateTimeOffset endedAt,
        Func<string, decimal?> earlier
    )
    {
        var method = StageMethods.Get(stage.Method);
        var entered = attempt.Readings.Where(r => r.Reading.Source != ReadingSource.Computed).ToList();
        return new(
            stage,
            entered.ToDictionary(r => r.Reading.Characteristic, r => r.Value),
            evidence,
            attempt.Attempt.OccurredAt,
            endedAt,
            name =>
                method.ReadsEarlier.Contains(name)
                    ? earlier(name)
                    : throw new InvalidOperationException($"method {method.Name} does not say that it reads '{name}' of an earlier stage")
        )
        {
            AttemptNumber = attempt.Attempt.Number,
            ReadAt = entered.ToDictionary(r => r.Reading.Characteristic, r => r.Reading.OccurredAt),
            LowerBounds = entered.Where(r => r.IsLowerBound).Select(r => r.Reading.Characteristic).ToHashSet(),
            Inside = context.Inside.ToDictionary(i => i.Key, i => AsFitted(i.Value, method)),
            Instruments =
            [
                .. attempt.Instruments.Select(u => new InstrumentInUse(u.InstrumentCode, u.InstrumentKind, ConstantsOf(u, context))),
            ],
        };
    }

    private static FittedThing AsFitted(Input input, StageMethod method) =>
        input switch
        {
            PartInput part => new FittedPart(
                part.Position,
                part.Values.Where(v => method.ReadsOfFittedParts.Contains(v.Key)).ToDictionary(),
                part.FilmLotId
            ),
            LotInput lot => new FittedLot(lot.Position, lot.Lot),
            _ => throw new ArgumentOutOfRangeException(nameof(input)),
        };

    private static IReadOnlyDictionary<string, decimal> ConstantsOf(InstrumentUse use, GateContext context) =>
        use.CalibrationId is { } calibration && context.CalibrationConstants.TryGetValue(calibration, out var constants)
            ? constants
            : new Dictionary<string, decimal>();
}
