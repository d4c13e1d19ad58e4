using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.AcousticTest.Noise;

/// <summary>
/// High-pass of fourth order and 200 Hz, maximally flat, that takes rumble out of a recording before crackles are looked for in it.
/// </summary>
/// <remarks>
/// <para>
/// |H|² = 1 / (1 + (fc/f)^8): two second-order sections with Q = 1/(2 cos(pi/8)) = 0.5412 and 1/(2 cos(3 pi/8)) = 1.3066, made by the
/// bilinear transform with the corner prewarped: w = 2 pi fc/fs, alpha = sin w/(2Q); b = (1 + cos w)/2 (1, -2, 1); a = (1 + alpha, -2 cos
/// w, 1 - alpha). Source: Butterworth's definition; section coefficients of the Audio EQ Cookbook (W3C Group Note), from memory.
/// </para>
/// <para>
/// A recording begins anywhere in a rumble: filtered from rest, that step would look like a crackle. So the filter first runs over the
/// first 100 ms turned about the first sample, and what comes out of that is thrown away. Checks: <c>HighPassTests</c>.
/// </para>
/// </remarks>
public static class HighPass
{
    /// <summary>Corner (-3 dB), Hz.</summary>
    public const double CornerHz = 200;

    /// <summary>Below this rate nothing sensible is left above the corner, Hz.</summary>
    public const double LowestRateHz = 1000;

    private const double RunInSeconds = 0.1;
    private static readonly double[] Qualities = [1 / (2 * Math.Cos(Math.PI / 8)), 1 / (2 * Math.Cos(3 * Math.PI / 8))];

    /// <summary>The recording without what lies below the corner; as many samples as came in.</summary>
    /// <param name="samples">The recording, in any unit; finite.</param>
    /// <param name="sampleRateHz">Sample rate, Hz; at least <see cref="LowestRateHz"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A lower rate, or NaN.</exception>
    public static double[] Of(ReadOnlySpan<float> samples, double sampleRateHz)
    {
        Require.Within(sampleRateHz, LowestRateHz, double.MaxValue);
        var runIn = Math.Min(Math.Max(0, samples.Length - 1), (int)(RunInSeconds * sampleRateHz));
        var all = new double[runIn + samples.Length];
        for (var i = 1; i <= runIn; i++)
            all[runIn - i] = 2.0 * samples[0] - samples[i];
        for (var i = 0; i < samples.Length; i++)
            all[runIn + i] = samples[i];
        var rest = all.Length > 0 ? all[0] : 0;
        for (var i = 0; i < all.Length; i++)
            all[i] -= rest;
        foreach (var quality in Qualities)
            Filter(all, 2 * Math.PI * CornerHz / sampleRateHz, quality);
        return all[runIn..];
    }

    private static void Filter(double[] x, double w, double quality)
    {
        var (cosine, alpha) = (Math.Cos(w), Math.Sin(w) / (2 * quality));
        var gain = (1 + cosine) / 2 / (1 + alpha);
        var (a1, a2) = (-2 * cosine / (1 + alpha), (1 - alpha) / (1 + alpha));
        double x1 = 0,
            x2 = 0,
            y1 = 0,
            y2 = 0;
        for (var i = 0; i < x.Length; i++)
        {
            var y = gain * (x[i] - 2 * x1 + x2) - a1 * y1 - a2 * y2;
            (x2, x1, y2, y1) = (x1, x[i], y1, y);
            x[i] = y;
        }
    }
}
