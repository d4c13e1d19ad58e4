using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages;

namespace Traceability.Domain.Work;

/// <summary>
/// The one place that makes what a stage's method is given from the facts: for closing, for judging anew after a correction, and for
/// recomputing what was stored. The same facts give the same input.
/// </summary>
public static class StageInputs
{
    /// <summary>The input of an attempt that ends, or ended, at <paramref name="endedAt"/>.</summary>
    public static StageInput Of(Dossier dossier, AttemptView attempt, Stage stage, IReadOnlyList<EvidenceFile> evidence, GateContext context, DateTimeOffset endedAt)
    {
        var entered = attempt.Readings.Where(r => r.Reading.Source != ReadingSource.Computed).ToList();
        return new(
            stage, entered.ToDictionary(r => r.Reading.Characteristic, r => r.Value), evidence, attempt.Attempt.OccurredAt, endedAt,
            characteristic => dossier.CountingReading(characteristic)?.Value)
        {
            AttemptNumber = attempt.Attempt.Number,
            LowerBounds = entered.Where(r => r.IsLowerBound).Select(r => r.Reading.Characteristic).ToHashSet(),
            Inside = context.Inside,
            Instruments = [.. attempt.Instruments.Select(u => new InstrumentInUse(u.InstrumentCode, u.InstrumentKind, ConstantsOf(u, context)))],
        };
    }

    private static IReadOnlyDictionary<string, decimal> ConstantsOf(InstrumentUse use, GateContext context) =>
        use.CalibrationId is { } calibration && context.CalibrationConstants.TryGetValue(calibration, out var constants) ? constants : new Dictionary<string, decimal>();
}
