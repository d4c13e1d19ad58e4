namespace Traceability.Domain.Stages.ClimateSoak;

/// <summary>Several phases, one after the other, in one log.</summary>
/// <remarks>
/// A phase is over at its first departure from tolerance after its dwell was met; what follows belongs to the next phase, which therefore
/// starts with the change of climate. The last phase takes all that is left. Each piece is judged by <see cref="SoakConformity"/>.
/// Checks: <c>SoakProgrammeTests</c>.
/// </remarks>
public static class SoakProgramme
{
    /// <summary>Judges the phases in their order.</summary>
    /// <param name="samples">The whole log, in the order of the file.</param>
    /// <param name="phases">The phases of the route, at least one.</param>
    /// <returns>One result for each phase. A phase that the log never reaches is not shown.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No phase, or a phase that makes no sense.</exception>
    public static IReadOnlyList<SoakResult> Judge(IReadOnlyList<ClimateSample> samples, IReadOnlyList<SoakPhase> phases)
    {
        ArgumentNullException.ThrowIfNull(phases);
        ArgumentOutOfRangeException.ThrowIfZero(phases.Count, nameof(phases));
        foreach (var phase in phases)
            phase.Check();
        var log = ClimateLogCheck.Of(samples);
        if (log.Problem is { } problem)
            return [.. phases.Select(_ => SoakResult.NotShown(problem))];

        var results = new List<SoakResult>(phases.Count);
        var from = 0;
        for (var i = 0; i < phases.Count; i++)
        {
            var until = i == phases.Count - 1 ? log.Usable.Count : EndOf(phases[i], log.Usable, from);
            ClimateSample[] own = [.. log.Usable.Skip(from).Take(until - from)];
            var last = Array.FindLastIndex(own, s => phases[i].Departure(s) is SoakDeparture.None);
            results.Add(
                SoakConformity.Judge(own, phases[i]) with
                {
                    LastInToleranceAt = last < 0 ? null : own[last].At,
                    From = until > from ? log.Usable[from].At : null,
                    Until = until > from ? log.Usable[until - 1].At : null,
                }
            );
            // The last reading in tolerance is also where the next change of climate sets out from.
            from = Math.Max(from, until - 1);
        }
        results[0] = results[0] with { Findings = [.. results[0].Findings, .. log.Remarks] };
        return results;
    }

    private static int EndOf(SoakPhase phase, IReadOnlyList<ClimateSample> samples, int from)
    {
        DateTimeOffset? dwellFrom = null;
        var end = from;
        for (; end < samples.Count; end++)
        {
            var gap = end > from && (samples[end].At - samples[end - 1].At).TotalMinutes > phase.MaxGapMinutes;
            if (!gap && phase.Departure(samples[end]) is SoakDeparture.None)
            {
                dwellFrom ??= samples[end].At;
                continue;
            }
            if (dwellFrom is { } start && (samples[end - 1].At - start).TotalMinutes >= phase.MinDwellMinutes)
                return end;
            dwellFrom = null;
        }
        return end;
    }
}
