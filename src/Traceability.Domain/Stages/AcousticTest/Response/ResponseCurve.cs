using Traceability.Domain.Stages.AcousticTest.Findings;
using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.AcousticTest.Response;

/// <summary>One point of a frequency response.</summary>
/// <param name="FrequencyHz">Frequency, Hz.</param>
/// <param name="LevelDb">Level, dB; the reference does not matter here.</param>
public readonly record struct ResponsePoint(double FrequencyHz, double LevelDb);

/// <summary>
/// A frequency response: points in rising order of frequency, straight lines over log f between them, nothing outside them.
/// </summary>
/// <remarks>Check: <c>ResponseCurveTests</c>.</remarks>
public sealed class ResponseCurve
{
    private readonly ResponsePoint[] _points;

    /// <summary>Takes over a measured or wanted curve.</summary>
    /// <param name="points">Two points or more, frequencies positive and strictly rising, levels finite.</param>
    /// <exception cref="ArgumentException">The points are no curve; the message is that of <see cref="ProblemWith"/>.</exception>
    public ResponseCurve(IReadOnlyList<ResponsePoint> points)
    {
        if (ProblemWith(points) is { } problem)
            throw new ArgumentException(problem, nameof(points));
        _points = [.. points];
    }

    /// <summary>The points, in rising order of frequency.</summary>
    public IReadOnlyList<ResponsePoint> Points => _points;

    /// <summary>Lowest frequency of the curve, Hz.</summary>
    public double LowestHz => _points[0].FrequencyHz;

    /// <summary>Highest frequency of the curve, Hz.</summary>
    public double HighestHz => _points[^1].FrequencyHz;

    /// <summary>What keeps a list of points from being a curve, naming the point (counted from 1); null when nothing does.</summary>
    /// <param name="points">The points as read.</param>
    public static string? ProblemWith(IReadOnlyList<ResponsePoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (points.Count < 2)
            return AcousticTexts.CurveHasTooFewPoints(points.Count);
        for (var i = 0; i < points.Count; i++)
        {
            var (frequencyHz, levelDb) = points[i];
            if (!double.IsFinite(frequencyHz) || frequencyHz <= 0)
                return AcousticTexts.PointIsNoFrequency(i + 1, frequencyHz);
            if (!double.IsFinite(levelDb))
                return AcousticTexts.PointHasNoLevel(i + 1, frequencyHz, levelDb);
            if (i == 0 || frequencyHz > points[i - 1].FrequencyHz)
                continue;
            return frequencyHz == points[i - 1].FrequencyHz
                ? AcousticTexts.PointStandsThereTwice(i + 1, frequencyHz)
                : AcousticTexts.PointsMustRise(i + 1, frequencyHz, points[i - 1].FrequencyHz);
        }
        return null;
    }

    /// <summary>
    /// Level at a frequency, dB: L1 + (L2 - L1) ln(f/f1) / ln(f2/f1) between the neighbouring points. Null outside the curve:
    /// nothing is extrapolated.
    /// </summary>
    /// <param name="frequencyHz">Frequency, Hz; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is zero, negative or NaN.</exception>
    public double? LevelAt(double frequencyHz)
    {
        Require.Positive(frequencyHz);
        if (frequencyHz < LowestHz || frequencyHz > HighestHz)
            return null;
        var (low, high) = (0, _points.Length - 1);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            if (_points[middle].FrequencyHz <= frequencyHz)
                low = middle;
            else
                high = middle;
        }
        return LogFrequency.Between(
            _points[low].FrequencyHz,
            _points[low].LevelDb,
            _points[high].FrequencyHz,
            _points[high].LevelDb,
            frequencyHz
        );
    }
}
