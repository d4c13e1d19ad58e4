using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.AcousticTest.Response;

/// <summary>
/// Smoothing over a fraction of an octave: mean of the power over [f G^(-1/2b), f G^(1/2b)], each point weighted by its share of log f.
/// </summary>
/// <remarks>
/// On a grid of equal log steps all weights are equal; on the linear grid of a Fourier transform each line weighs d(ln f). A point
/// weighs half the log distance between its neighbours, at the ends of the curve the whole distance to its one neighbour. Where the
/// window holds no point the curve's own level stands. Source: common practice, no source. Checks: published values E6,
/// <c>OctaveSmoothingTests</c>.
/// </remarks>
public static class OctaveSmoothing
{
    /// <summary>So that points on the very edge of the window are inside whatever their binary form.</summary>
    private const double Rounding = 1e-9;

    /// <summary>Smoothed level at one frequency, dB; null outside the curve.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="frequencyHz">f, Hz; greater than zero.</param>
    /// <param name="perOctave">b of the 1/b octave; 1 to 96.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double? LevelAt(ResponseCurve curve, double frequencyHz, int perOctave)
    {
        ArgumentNullException.ThrowIfNull(curve);
        Require.Within(perOctave, 1, 96);
        if (curve.LevelAt(frequencyHz) is not { } own)
            return null;
        var half = Math.Pow(OctaveBand.Ratio, 1 / (2.0 * perOctave));
        var points = curve.Points;
        double power = 0,
            weights = 0;
        var (lowestHz, highestHz) = (frequencyHz / half * (1 - Rounding), frequencyHz * half * (1 + Rounding));
        for (var i = FirstAtOrAbove(points, lowestHz); i < points.Count && points[i].FrequencyHz <= highestHz; i++)
        {
            var weight = Share(points, i);
            power += weight * Math.Pow(10, points[i].LevelDb / 10);
            weights += weight;
        }
        return weights > 0 ? 10 * Math.Log10(power / weights) : own;
    }

    /// <summary>The whole curve smoothed, at its own frequencies.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="perOctave">b of the 1/b octave; 1 to 96.</param>
    /// <exception cref="ArgumentOutOfRangeException">A fraction outside this range.</exception>
    public static ResponseCurve Smooth(ResponseCurve curve, int perOctave)
    {
        ArgumentNullException.ThrowIfNull(curve);
        return new([.. curve.Points.Select(p => p with { LevelDb = LevelAt(curve, p.FrequencyHz, perOctave)!.Value })]);
    }

    private static double Share(IReadOnlyList<ResponsePoint> points, int i)
    {
        var last = points.Count - 1;
        var (left, right) = (Math.Max(i - 1, 0), Math.Min(i + 1, last));
        return Math.Log(points[right].FrequencyHz / points[left].FrequencyHz) / (right - left);
    }

    private static int FirstAtOrAbove(IReadOnlyList<ResponsePoint> points, double frequencyHz)
    {
        var (low, high) = (0, points.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (points[middle].FrequencyHz < frequencyHz)
                low = middle + 1;
            else
                high = middle;
        }
        return low;
    }
}
