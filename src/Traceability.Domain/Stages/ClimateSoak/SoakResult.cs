namespace Traceability.Domain.Stages.ClimateSoak;

/// <summary>What a climate log says about one phase.</summary>
public enum SoakVerdict
{
    /// <summary>The log shows what the phase asks for.</summary>
    Conforms,

    /// <summary>The log shows that something the phase asks for was missed.</summary>
    DoesNotConform,

    /// <summary>The log cannot be judged; the findings say at which sample and why.</summary>
    NotShown,
}

/// <summary>Conformity of one phase of a soak, computed from its log.</summary>
/// <param name="Verdict">The verdict.</param>
/// <param name="DwellMinutes">Time in tolerance that counts, min: the longest unbroken one, or the sum where excursions are
/// subtracted.</param>
/// <param name="StabilisedAt">Start of the dwell that counts; null when the phase never stabilised.</param>
/// <param name="DwellEndedAt">Last reading of that dwell.</param>
/// <param name="MaxRampKPerMinute">Steepest mean change of temperature over the ramp window, K/min, without sign.</param>
/// <param name="MaxRampAt">Start of that window.</param>
/// <param name="LongestExcursionMinutes">
/// Longest stay outside tolerance after the first stabilisation, min, from the last good reading to the next: what the log cannot exclude.
/// </param>
/// <param name="ExcursionCount">Number of such stays.</param>
/// <param name="WidestGapMinutes">Longest step between two usable lines of the log, min.</param>
/// <param name="Findings">The reasons in words, worst first.</param>
public sealed record SoakResult(
    SoakVerdict Verdict,
    double DwellMinutes,
    DateTimeOffset? StabilisedAt,
    DateTimeOffset? DwellEndedAt,
    double MaxRampKPerMinute,
    DateTimeOffset? MaxRampAt,
    double LongestExcursionMinutes,
    int ExcursionCount,
    double WidestGapMinutes,
    IReadOnlyList<string> Findings
)
{
    /// <summary>
    /// First line of the log that belongs to the phase: where its change of climate set out from. Null when the log never reaches it.
    /// </summary>
    public DateTimeOffset? From { get; init; }

    /// <summary>Last line of the phase that lies inside its tolerance; null when none does.</summary>
    public DateTimeOffset? LastInToleranceAt { get; init; }

    /// <summary>Last line of the log that belongs to it.</summary>
    public DateTimeOffset? Until { get; init; }

    internal static SoakResult NotShown(params IReadOnlyList<string> findings) =>
        new(SoakVerdict.NotShown, 0, null, null, 0, null, 0, 0, 0, findings);
}
