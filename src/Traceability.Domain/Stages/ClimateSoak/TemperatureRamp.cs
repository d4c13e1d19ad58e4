using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.ClimateSoak;

/// <summary>How fast the temperature of a log changed.</summary>
/// <param name="KPerMinute">Greatest change, K/min, without sign.</param>
/// <param name="From">Start of the window in which it happened; null for a log with fewer than two lines.</param>
public readonly record struct TemperatureRamp(double KPerMinute, DateTimeOffset? From)
{
    /// <summary>
    /// Steepest change between two neighbouring lines, K/min. For information: noise of the logger and a short sampling step make it
    /// large, so no limit is judged on it.
    /// </summary>
    /// <param name="samples">The log in order of time, each time later than the one before.</param>
    /// <remarks>Check: published value D8-002.</remarks>
    public static TemperatureRamp BetweenSamples(IReadOnlyList<ClimateSample> samples)
    {
        ArgumentNullException.ThrowIfNull(samples);
        var steepest = default(TemperatureRamp);
        for (var i = 1; i < samples.Count; i++)
            steepest = steepest.OrSteeper(
                samples[i - 1].At,
                samples[i].TemperatureC - samples[i - 1].TemperatureC,
                Minutes(samples, i - 1, i)
            );
        return steepest;
    }

    /// <summary>
    /// Steepest mean change over a window of fixed length: max |T(t + w) - T(t)| / w, with the log taken as straight between its lines.
    /// </summary>
    /// <param name="samples">The log in order of time, each time later than the one before.</param>
    /// <param name="windowMinutes">Length w of the window, min; greater than zero. A log shorter than w is taken whole.</param>
    /// <remarks>
    /// T(t + w) - T(t) is piecewise linear in t, so its extremes lie where one end of the window meets a line of the log: two passes
    /// with a moving pointer find them. Source of the averaging: IEC 60068-2-1 and -2-2, "averaged over not more than 5 min", from memory.
    /// Check: the tests of <c>TemperatureRampTests</c>.
    /// </remarks>
    public static TemperatureRamp OverWindow(IReadOnlyList<ClimateSample> samples, double windowMinutes)
    {
        ArgumentNullException.ThrowIfNull(samples);
        Require.Positive(windowMinutes);
        var steepest = default(TemperatureRamp);
        if (samples.Count < 2)
            return steepest;

        var last = samples.Count - 1;
        var whole = Minutes(samples, 0, last);
        if (whole <= windowMinutes)
            return steepest.OrSteeper(samples[0].At, samples[last].TemperatureC - samples[0].TemperatureC, whole);

        var window = TimeSpan.FromMinutes(windowMinutes);
        for (int i = 0, ahead = 0; i <= last && samples[i].At + window <= samples[last].At; i++)
        {
            var end = samples[i].At + window;
            while (samples[ahead + 1].At < end)
                ahead++;
            steepest = steepest.OrSteeper(samples[i].At, Between(samples, ahead, end) - samples[i].TemperatureC, windowMinutes);
        }
        for (int i = 1, behind = 0; i <= last; i++)
        {
            var start = samples[i].At - window;
            if (start < samples[0].At)
                continue;
            while (samples[behind + 1].At < start)
                behind++;
            steepest = steepest.OrSteeper(start, samples[i].TemperatureC - Between(samples, behind, start), windowMinutes);
        }
        return steepest;
    }

    private TemperatureRamp OrSteeper(DateTimeOffset from, double changeK, double minutes) =>
        Math.Abs(changeK) / minutes > KPerMinute ? new(Math.Abs(changeK) / minutes, from) : this;

    private static double Minutes(IReadOnlyList<ClimateSample> samples, int from, int to) =>
        (samples[to].At - samples[from].At).TotalMinutes;

    private static double Between(IReadOnlyList<ClimateSample> samples, int left, DateTimeOffset at)
    {
        var (a, b) = (samples[left], samples[left + 1]);
        return a.TemperatureC + (b.TemperatureC - a.TemperatureC) * ((at - a.At) / (b.At - a.At));
    }
}
