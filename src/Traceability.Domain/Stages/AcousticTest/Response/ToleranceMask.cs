using Traceability.Domain.Stages.AcousticTest.Findings;
using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.AcousticTest.Response;

/// <summary>One corner of a mask: what a response may deviate at this frequency.</summary>
/// <param name="FrequencyHz">Frequency, Hz.</param>
/// <param name="LowerDb">Lowest allowed deviation, dB; null where the mask has no lower side.</param>
/// <param name="UpperDb">Highest allowed deviation, dB; null where the mask has no upper side.</param>
public readonly record struct MaskPoint(double FrequencyHz, double? LowerDb, double? UpperDb)
{
    /// <summary>A corner that allows the same to both sides.</summary>
    /// <param name="frequencyHz">Frequency, Hz.</param>
    /// <param name="halfWidthDb">Allowed deviation to either side, dB.</param>
    public static MaskPoint Symmetric(double frequencyHz, double halfWidthDb) => new(frequencyHz, -halfWidthDb, halfWidthDb);
}

/// <summary>The allowed band at one frequency, dB; a side without requirement is null.</summary>
/// <param name="LowerDb">Lowest allowed deviation, dB.</param>
/// <param name="UpperDb">Highest allowed deviation, dB.</param>
public readonly record struct MaskLimits(double? LowerDb, double? UpperDb);

/// <summary>
/// A tolerance mask over frequency: m(f) = m1 + (m2 - m1) ln(f/f1) / ln(f2/f1) between its corners and no requirement outside them.
/// </summary>
/// <remarks>
/// A step is written as two corners at one frequency; there the stricter side holds. A side that one of two neighbouring corners leaves
/// out has no requirement between them. Checks: published values E7-001 to E7-003, <c>ToleranceMaskTests</c>.
/// </remarks>
public sealed class ToleranceMask
{
    private readonly MaskPoint[] _points;

    /// <summary>Takes over the corners of a mask.</summary>
    /// <param name="points">Two corners or more, frequencies positive and never falling, at most two at one frequency, lower below
    /// upper.</param>
    /// <exception cref="ArgumentException">The corners are no mask; the message is that of <see cref="ProblemWith"/>.</exception>
    public ToleranceMask(IReadOnlyList<MaskPoint> points)
    {
        if (ProblemWith(points) is { } problem)
            throw new ArgumentException(problem, nameof(points));
        _points = [.. points];
    }

    /// <summary>The corners, in rising order of frequency.</summary>
    public IReadOnlyList<MaskPoint> Points => _points;

    /// <summary>Where the requirement begins, Hz.</summary>
    public double LowestHz => _points[0].FrequencyHz;

    /// <summary>Where the requirement ends, Hz.</summary>
    public double HighestHz => _points[^1].FrequencyHz;

    /// <summary>What keeps a list of corners from being a mask, naming the corner (counted from 1); null when nothing does.</summary>
    /// <param name="points">The corners as read.</param>
    public static string? ProblemWith(IReadOnlyList<MaskPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (points.Count < 2)
            return AcousticTexts.MaskHasTooFewCorners(points.Count);
        for (var i = 0; i < points.Count; i++)
        {
            var (frequencyHz, lowerDb, upperDb) = points[i];
            if (!double.IsFinite(frequencyHz) || frequencyHz <= 0)
                return AcousticTexts.CornerIsNoFrequency(i + 1, frequencyHz);
            if (lowerDb is { } low && !double.IsFinite(low) || upperDb is { } high && !double.IsFinite(high))
                return AcousticTexts.CornerHasNoLimit(i + 1, frequencyHz);
            if (lowerDb > upperDb)
                return AcousticTexts.CornerHasLimitsCrossed(i + 1, frequencyHz, lowerDb, upperDb);
            if (i > 0 && frequencyHz < points[i - 1].FrequencyHz)
                return AcousticTexts.CornersMustRise(i + 1, frequencyHz, points[i - 1].FrequencyHz);
            if (i > 1 && frequencyHz == points[i - 2].FrequencyHz)
                return AcousticTexts.CornerStandsThereTooOften(i + 1, frequencyHz);
        }
        return points[0].FrequencyHz == points[^1].FrequencyHz ? AcousticTexts.MaskCoversOneFrequencyOnly : null;
    }

    /// <summary>The allowed band at a frequency; null outside the mask, where nothing is required.</summary>
    /// <param name="frequencyHz">Frequency, Hz; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is zero, negative or NaN.</exception>
    public MaskLimits? At(double frequencyHz)
    {
        Require.Positive(frequencyHz);
        if (frequencyHz < LowestHz || frequencyHz > HighestHz)
            return null;
        MaskLimits? band = null;
        for (var i = 1; i < _points.Length; i++)
        {
            var (left, right) = (_points[i - 1], _points[i]);
            if (frequencyHz < left.FrequencyHz || frequencyHz > right.FrequencyHz || left.FrequencyHz == right.FrequencyHz)
                continue;
            band = Stricter(band, new(Side(left, left.LowerDb, right, right.LowerDb), Side(left, left.UpperDb, right, right.UpperDb)));
        }
        return band;

        double? Side(MaskPoint left, double? atLeft, MaskPoint right, double? atRight) =>
            atLeft is { } from && atRight is { } to
                ? LogFrequency.Between(left.FrequencyHz, from, right.FrequencyHz, to, frequencyHz)
                : null;
    }

    private static MaskLimits Stricter(MaskLimits? one, MaskLimits other) =>
        one is { } first ? new(Pick(first.LowerDb, other.LowerDb, Math.Max), Pick(first.UpperDb, other.UpperDb, Math.Min)) : other;

    private static double? Pick(double? a, double? b, Func<double, double, double> stricter) =>
        a is { } first && b is { } second ? stricter(first, second) : a ?? b;
}
