using System.Globalization;
using Traceability.Domain.Evidence;
using Traceability.Domain.Routes;

namespace Traceability.Domain.Stages.ClimateSoak;

/// <summary>
/// Judges a soak from its logger's file, never from a tick: each phase of the route must show its dwell inside tolerance, in order.
/// Gives <c>{phase}DwellMinutes</c> for every phase. The log must belong to this run: loggers' clocks differ by hours at most
/// when somebody forgot the summer time (common practice, no source), not by days.
/// </summary>
public sealed class SoakFromLog : StageMethod
{
    private static readonly TimeSpan LoggerClockMayDiffer = TimeSpan.FromHours(3);

    /// <inheritdoc/>
    public override string Name => "climate-soak";

    /// <inheritdoc/>
    public override int Version => 1;

    /// <inheritdoc/>
    public override IEnumerable<string> ProblemsWith(Stage stage)
    {
        if (stage.Parameters.Phases is not { Count: > 0 } phases)
        {
            return ["a climate soak needs 'parameters: phases'"];
        }

        var evidence = stage.Evidence.Any(e => e.Kind == EvidenceKind.ClimateLog.Code() && e.Required) ? [] : new[] { "a climate soak needs evidence of kind climate-log" };
        var source = stage.Parameters.ToleranceSource is null ? ["a climate soak says where its tolerances come from: 'toleranceSource'"] : Array.Empty<string>();
        return [.. evidence, .. source, .. NeedsComputed(stage, phases.Select(DwellOf))];
    }

    /// <inheritdoc/>
    public override StageOutcome Judge(StageInput input)
    {
        var file = input.Evidence.Last(e => e.Kind == EvidenceKind.ClimateLog.Code());
        var log = ClimateLogFile.Read(file.Bytes);
        if (!log.IsGood)
        {
            return StageOutcome.CannotJudge($"The climate log cannot be read: {string.Join("; ", log.Problems)}.");
        }

        var samples = log.Data.Rows.Select(r => new ClimateSample(r.At, r.TemperatureC, r.HumidityPct)).ToList();
        if (samples[^1].At < input.OpenedAt - LoggerClockMayDiffer || samples[0].At > input.ClosedAt + LoggerClockMayDiffer)
        {
            return StageOutcome.CannotJudge(
                $"The climate log runs from {samples[0].At:u} to {samples[^1].At:u}, but the soak from {input.OpenedAt:u} to {input.ClosedAt:u}: it belongs to another run.");
        }

        var values = new List<ComputedValue>();
        var findings = log.Notes.Select(n => new StageFinding(n, false)).ToList();
        DateTimeOffset? previousEnd = null;
        foreach (var phase in input.Stage.Parameters.Phases!)
        {
            var result = SoakConformity.Judge(samples, PhaseOf(phase));
            var dwell = Math.Round((decimal)result.DwellMinutes, 1);
            values.Add(new(DwellOf(phase), dwell, dwell.ToString("0.0", CultureInfo.InvariantCulture), file.Id));
            findings.AddRange(result.Findings.Select(f => new StageFinding($"{phase.Name}: {f}", result.Verdict != SoakVerdict.Conforms)));
            if (result.StabilisedAt < previousEnd)
            {
                findings.Add(new($"{phase.Name} came before the phase that it follows", true));
            }

            previousEnd = result.DwellEndedAt ?? previousEnd;
        }

        return new(values, findings);
    }

    private static string DwellOf(SoakPhaseParameters phase) => $"{phase.Name}DwellMinutes";

    /// <summary>A phase as the route states it.</summary>
    public static SoakPhase PhaseOf(SoakPhaseParameters p) => new(
        p.Name, (double)p.TemperatureC, (double)p.TemperatureToleranceK, (double?)p.HumidityPct, (double?)p.HumidityTolerancePct,
        p.MinDwellMinutes, (double?)p.MaxRampKPerMinute, p.MaxGapMinutes);
}
