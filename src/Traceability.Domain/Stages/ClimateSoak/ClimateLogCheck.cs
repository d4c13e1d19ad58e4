using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.ClimateSoak;

/// <summary>Sorts the usable lines of a climate log from those that say nothing, and names the line that makes a log unusable.</summary>
/// <param name="Usable">The lines that carry a temperature, in order of time.</param>
/// <param name="Remarks">What was left out, in words.</param>
/// <param name="Problem">Why the log cannot be judged; null when it can.</param>
public sealed record ClimateLogCheck(IReadOnlyList<ClimateSample> Usable, IReadOnlyList<string> Remarks, string? Problem)
{
    /// <summary>
    /// Checks a log. Lines without a temperature are left out (what they leave is a gap); a line repeated word for word is left out;
    /// time that stands still with other values, or runs backwards, makes the log unusable, and so does a temperature below absolute
    /// zero or a humidity below 0 %.
    /// </summary>
    /// <param name="samples">The log as read, in the order of the file. Samples are counted from 1.</param>
    public static ClimateLogCheck Of(IReadOnlyList<ClimateSample> samples)
    {
        ArgumentNullException.ThrowIfNull(samples);
        var usable = new List<ClimateSample>(samples.Count);
        int empty = 0,
            repeated = 0;
        for (var i = 0; i < samples.Count; i++)
        {
            var sample = samples[i];
            if (!double.IsFinite(sample.TemperatureC))
            {
                empty++;
                continue;
            }
            if (sample.TemperatureC < -PhysicalConstants.ZeroCelsiusK || sample.HumidityPct < 0)
                return Unusable(SoakTexts.SampleIsNoClimate(i + 1, sample.TemperatureC, sample.HumidityPct));
            if (usable.Count > 0 && sample.At <= usable[^1].At)
            {
                if (!sample.Equals(usable[^1]))
                    return Unusable(SoakTexts.SampleAtIsNotLater(i + 1, SoakWords.Time(sample.At), SoakWords.Time(usable[^1].At)));
                repeated++;
                continue;
            }
            usable.Add(sample);
        }
        if (usable.Count < 2)
            return Unusable(SoakTexts.LogHasTooFewSamples(usable.Count));

        var remarks = new List<string>();
        if (empty > 0)
            remarks.Add(SoakTexts.SamplesCarryNoTemperature(empty));
        if (repeated > 0)
            remarks.Add(SoakTexts.SamplesRepeatTheOneBefore(repeated));
        return new(usable, remarks, null);
    }

    private static ClimateLogCheck Unusable(string problem) => new([], [], problem);
}
