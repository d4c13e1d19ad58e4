using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.AcousticTest.Response;

/// <summary>How well two responses go together: front and rear of a capsule, or two microphones of a pair.</summary>
/// <param name="MeanDb">Mean of first less second, dB: a difference of gain, which can be trimmed.</param>
/// <param name="ShapeRmsDb">Root mean square of the difference with its mean taken off, dB: what cannot be trimmed.</param>
/// <param name="GreatestDb">Greatest difference without sign, mean included, dB.</param>
/// <param name="GreatestAtHz">Where that is, Hz; null when only levels were given.</param>
/// <remarks>
/// All points weigh the same, so they should lie evenly over log f. Checks: published values E10, <c>CurveMatchTests</c>.
/// </remarks>
public readonly record struct CurveMatch(double MeanDb, double ShapeRmsDb, double GreatestDb, double? GreatestAtHz)
{
    /// <summary>Two rows of levels at the same frequencies.</summary>
    /// <param name="firstDb">First, dB; at least one value.</param>
    /// <param name="secondDb">Second, dB; as many.</param>
    /// <exception cref="ArgumentException">Rows of different length or of none.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A level that is not finite.</exception>
    public static CurveMatch Of(IReadOnlyList<double> firstDb, IReadOnlyList<double> secondDb)
    {
        ArgumentNullException.ThrowIfNull(firstDb);
        ArgumentNullException.ThrowIfNull(secondDb);
        if (firstDb.Count != secondDb.Count || firstDb.Count == 0)
            throw new ArgumentException(
                $"{firstDb.Count} levels against {secondDb.Count}: as many are needed, and at least one",
                nameof(secondDb)
            );
        double[] differences =
        [
            .. firstDb.Zip(secondDb, (a, b) => Require.Finite(a, nameof(firstDb)) - Require.Finite(b, nameof(secondDb))),
        ];
        var mean = differences.Average();
        return new(mean, Math.Sqrt(differences.Average(d => (d - mean) * (d - mean))), differences.Max(Math.Abs), null);
    }

    /// <summary>Two curves, at the frequencies of the first that lie in a range and on the second.</summary>
    /// <param name="first">First curve.</param>
    /// <param name="second">Second curve.</param>
    /// <param name="lowestHz">Lower end of the range, Hz; greater than zero.</param>
    /// <param name="highestHz">Upper end, Hz; above the lower.</param>
    /// <returns>The match; null when no frequency lies on both.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A range that is none, or NaN.</exception>
    public static CurveMatch? Of(ResponseCurve first, ResponseCurve second, double lowestHz, double highestHz)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        Require.Within(highestHz, Require.Positive(lowestHz), double.MaxValue);
        var shared = first
            .Points.Where(p => p.FrequencyHz >= lowestHz && p.FrequencyHz <= highestHz && second.LevelAt(p.FrequencyHz) is not null)
            .ToArray();
        if (shared.Length == 0)
            return null;
        double[] others = [.. shared.Select(p => second.LevelAt(p.FrequencyHz)!.Value)];
        var match = Of([.. shared.Select(p => p.LevelDb)], others);
        var at = shared.Zip(others).First(pair => Math.Abs(pair.First.LevelDb - pair.Second) == match.GreatestDb).First.FrequencyHz;
        return match with { GreatestAtHz = at };
    }
}
