using MathNet.Numerics.Statistics;
using Traceability.Domain.Stages.AcousticTest.Findings;
using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.AcousticTest.Noise;

/// <summary>Crackles in a recording without sound: moments far above the noise floor.</summary>
/// <param name="Count">Number of crackles; zero when there is no verdict.</param>
/// <param name="TimesS">When each began, s from the start of the recording.</param>
/// <param name="NoiseFloor">Robust standard deviation of the recording after the high-pass, in its own unit.</param>
/// <param name="Threshold">Distance from the median above which a sample after the high-pass is part of a crackle, in the same
/// unit.</param>
/// <param name="Problem">Why nothing can be said (empty, silent, not a number), in words; null when something can.</param>
/// <remarks>
/// <para>
/// First a high-pass of 200 Hz and fourth order (<see cref="HighPass"/>) takes the rumble out: a crackle is short, and rumble many times as
/// strong would hide it. The floor is 1.4826 times the median absolute deviation from the median, which crackles do not raise as they raise
/// the rms value. A sample farther than k times the floor from the median starts a crackle; samples above the threshold less than the hold
/// time apart belong to the same one. With k = 8 Gaussian noise makes one in 10^9 recordings of ten seconds. k, hold time and corner:
/// common practice, no source.
/// </para>
/// <para>Source of the estimate: Rousseeuw and Croux, J. Am. Stat. Assoc. 88 (1993) 1273, from memory. Checks:
/// <c>CrackleCountTests</c>.</para>
/// </remarks>
public sealed record CrackleCount(int Count, IReadOnlyList<double> TimesS, double NoiseFloor, double Threshold, string? Problem)
{
    private const double MadToSigma = 1.4826;

    /// <summary>Counts the crackles.</summary>
    /// <param name="samples">The recording, in any unit.</param>
    /// <param name="sampleRateHz">Sample rate, Hz; greater than zero.</param>
    /// <param name="timesFloor">k; 3 to 100.</param>
    /// <param name="holdMs">Hold time, ms; not negative.</param>
    /// <exception cref="ArgumentOutOfRangeException">A rate, k or hold time outside these ranges, or NaN.</exception>
    public static CrackleCount In(ReadOnlySpan<float> samples, double sampleRateHz, double timesFloor = 8, double holdMs = 5)
    {
        Require.Positive(sampleRateHz);
        Require.Within(timesFloor, 3, 100);
        Require.NotNegative(holdMs);
        if (samples.IsEmpty)
            return Nothing(AcousticTexts.RecordingIsEmpty);
        for (var i = 0; i < samples.Length; i++)
            if (!float.IsFinite(samples[i]))
                return Nothing(AcousticTexts.SampleIsNoNumber(i + 1));
        if (sampleRateHz < HighPass.LowestRateHz)
            return Nothing(AcousticTexts.RateIsTooLowForCrackles(sampleRateHz, HighPass.LowestRateHz));

        // Steps coarser than the noise must be seen before the filter smears them.
        var raw = new double[samples.Length];
        for (var i = 0; i < raw.Length; i++)
            raw[i] = samples[i];
        var filtered = HighPass.Of(samples, sampleRateHz);
        var (median, floor) = Spread(filtered);
        if (Spread(raw).Floor == 0 || floor == 0)
            return Nothing(AcousticTexts.RecordingIsSilentOrCoarse);

        var threshold = timesFloor * floor;
        var times = Beginnings(filtered, median, threshold, holdMs / 1000 * sampleRateHz).Select(i => i / sampleRateHz).ToArray();
        return new(times.Length, times, floor, threshold, null);
    }

    private static (double Median, double Floor) Spread(double[] samples)
    {
        double[] work = [.. samples];
        var median = ArrayStatistics.MedianInplace(work);
        for (var i = 0; i < work.Length; i++)
            work[i] = Math.Abs(samples[i] - median);
        return (median, MadToSigma * ArrayStatistics.MedianInplace(work));
    }

    private static List<int> Beginnings(double[] samples, double median, double threshold, double holdSamples)
    {
        var beginnings = new List<int>();
        int? lastAbove = null;
        for (var i = 0; i < samples.Length; i++)
        {
            if (Math.Abs(samples[i] - median) <= threshold)
                continue;
            if (lastAbove is not { } last || i - last > holdSamples)
                beginnings.Add(i);
            lastAbove = i;
        }
        return beginnings;
    }

    private static CrackleCount Nothing(string problem) => new(0, [], 0, 0, problem);
}
