namespace Traceability.Domain.Stages.ClimateSoak;

/// <summary>
/// Conformity of a soak, computed from the log instead of ticked.
/// </summary>
/// <remarks>
/// <para>
/// The rules: (1) the phase is stabilised when a line of the log is in tolerance and the part, where the phase states its time
/// constant, is within 3 K of the set temperature; (2) the dwell counts from there, and an excursion restarts it (or is subtracted,
/// where the route says so); (3) the ramp is the mean change over windows of at most 5 min; (4) a step longer than the allowed gap
/// is an excursion; (5) humidity is judged only while the temperature is in tolerance.
/// </para>
/// <para>
/// Between two lines in tolerance the cabinet is taken to be in tolerance. The part is taken to start at the first logged air
/// temperature. Limits themselves are in tolerance. Source: the way of counting of IEC 60068-2-1, -2-2 and -2-78, from memory; which
/// numbers apply, and in which edition, is the route's to say. Checks: published values D8-001, D8-002, D9-001 and
/// <c>SoakConformityTests</c>.
/// </para>
/// </remarks>
public static class SoakConformity
{
    /// <summary>Judges one phase. One pass over the log, so a day of seconds is no matter.</summary>
    /// <param name="samples">The log, in the order of the file.</param>
    /// <param name="phase">What the route asks.</param>
    /// <returns>The verdict; <see cref="SoakVerdict.NotShown"/> with the reason for a log that cannot be judged.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The phase itself makes no sense (a tolerance of zero, a humidity without
    /// tolerance).</exception>
    public static SoakResult Judge(IReadOnlyList<ClimateSample> samples, SoakPhase phase)
    {
        ArgumentNullException.ThrowIfNull(phase);
        phase.Check();
        var log = ClimateLogCheck.Of(samples);
        if (log.Problem is { } problem)
            return SoakResult.NotShown(problem);

        var dwell = new DwellCount(phase);
        dwell.Walk(log.Usable);
        var ramp = TemperatureRamp.OverWindow(log.Usable, phase.RampWindowMinutes);
        var failures = Failures(phase, dwell, ramp);

        return new(
            failures.Count == 0 ? SoakVerdict.Conforms : SoakVerdict.DoesNotConform,
            dwell.Minutes,
            dwell.From,
            dwell.Until,
            ramp.KPerMinute,
            ramp.From,
            dwell.LongestExcursionMinutes,
            dwell.ExcursionCount,
            dwell.WidestGapMinutes,
            [.. failures, .. dwell.Excursions, .. log.Remarks, .. Remarks(phase, dwell)]
        );
    }

    private static List<string> Failures(SoakPhase phase, DwellCount dwell, TemperatureRamp ramp)
    {
        List<string> failures = [];
        if (dwell.From is null)
            failures.Add(SoakTexts.NeverStabilised(phase.Name));
        else if (dwell.Minutes < phase.MinDwellMinutes)
            failures.Add(SoakTexts.DwellIsTooShort(phase.Name, dwell.Minutes, phase.MinDwellMinutes));
        if (ramp.KPerMinute > phase.MaxRampKPerMinute * (1 + 1e-9))
            failures.Add(
                SoakTexts.RampIsTooSteep(
                    phase.Name,
                    ramp.KPerMinute,
                    phase.RampWindowMinutes,
                    SoakWords.Time(ramp.From!.Value),
                    phase.MaxRampKPerMinute
                )
            );
        return failures;
    }

    private static IEnumerable<string> Remarks(SoakPhase phase, DwellCount dwell)
    {
        if (dwell.LeftAfterDwell)
            yield return SoakTexts.LogLeavesToleranceAtTheEnd;
        if (phase.Excursions is ExcursionRule.IsSubtracted && dwell.ExcursionCount > 0)
            yield return SoakTexts.ExcursionsAreSubtracted(dwell.ExcursionCount);
        if (phase.MaxGapMinutes is null)
            yield return SoakTexts.NoLongestGapIsStated(dwell.WidestGapMinutes);
        if (phase.MaxRampKPerMinute is not null && dwell.WidestGapMinutes > phase.RampWindowMinutes)
            yield return SoakTexts.StepsAreWiderThanTheRampWindow(dwell.WidestGapMinutes, phase.RampWindowMinutes);
    }
}
