namespace Traceability.Domain.Stages.ClimateSoak;

/// <summary>A time in which water condensed on the part.</summary>
/// <param name="From">First line of the log at which the part was at the dew point or below.</param>
/// <param name="Until">Last such line in a row.</param>
public readonly record struct WetSpell(DateTimeOffset From, DateTimeOffset Until);

/// <summary>Dew point of the air against the temperature of the part, along a log.</summary>
/// <param name="LeastMarginK">Least distance of the part above the dew point, K; at or below zero it was wet. Null when no line carries a
/// humidity.</param>
/// <param name="LeastAt">When that was.</param>
/// <param name="Wet">The times in which it was wet.</param>
/// <remarks>
/// The part follows the logged air with one time constant (<see cref="SpecimenLag"/>) and starts at the first logged temperature; without a
/// time constant it is taken to be as warm as the air. A warming cabinet wets a cold part long before the air is saturated. Dew point by
/// <see cref="DewPoint.MagnusC"/>; lines without a humidity, or outside its range, say nothing. Checks: published value D5-001 and
/// <c>CondensationWatchTests</c>.
/// </remarks>
public sealed record CondensationWatch(double? LeastMarginK, DateTimeOffset? LeastAt, IReadOnlyList<WetSpell> Wet)
{
    /// <summary>Walks once through a log.</summary>
    /// <param name="usable">The log in order of time, each time later than the one before.</param>
    /// <param name="timeConstantMinutes">Time constant of the part, min; null when it is taken to follow the air at once.</param>
    /// <param name="after">Lines up to this moment warm or cool the part but are not looked at themselves; null to look from the first
    /// on.</param>
    /// <param name="until">Last line that is looked at; null for the last of the log.</param>
    public static CondensationWatch Along(
        IReadOnlyList<ClimateSample> usable,
        double? timeConstantMinutes,
        DateTimeOffset? after = null,
        DateTimeOffset? until = null
    )
    {
        ArgumentNullException.ThrowIfNull(usable);
        var wet = new List<WetSpell>();
        (double MarginK, DateTimeOffset At)? least = null;
        var partC = usable.Count > 0 ? usable[0].TemperatureC : 0;
        var wasWet = false;
        for (var i = 0; i < usable.Count; i++)
        {
            var sample = usable[i];
            partC =
                i == 0 || timeConstantMinutes is not { } lag
                    ? sample.TemperatureC
                    : SpecimenLag.Follow(
                        partC,
                        usable[i - 1].TemperatureC,
                        sample.TemperatureC,
                        (sample.At - usable[i - 1].At).TotalMinutes,
                        lag
                    );
            if (sample.At <= after || sample.At > until || sample is not { HumidityPct: > 0 and <= 120, TemperatureC: >= -100 and <= 100 })
                continue;

            var margin = DewPoint.CondensationMarginK(sample.TemperatureC, sample.HumidityPct.Value, partC);
            if (least is null || margin < least.Value.MarginK)
                least = (margin, sample.At);
            if (margin <= 0)
                wet = Extended(wet, sample.At, wasWet);
            wasWet = margin <= 0;
        }

        return new(least?.MarginK, least?.At, wet);
    }

    private static List<WetSpell> Extended(List<WetSpell> wet, DateTimeOffset at, bool goesOn)
    {
        if (goesOn)
            wet[^1] = wet[^1] with { Until = at };
        else
            wet.Add(new(at, at));
        return wet;
    }
}
