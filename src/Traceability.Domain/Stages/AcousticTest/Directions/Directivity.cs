using Traceability.Domain.Stages.AcousticTest.Findings;
using Traceability.Domain.Stages.AcousticTest.Response;

namespace Traceability.Domain.Stages.AcousticTest.Directions;

/// <summary>
/// Directivity from measured angles, for a pattern symmetrical about its axis.
/// </summary>
/// <remarks>
/// DI = L(0) - 10 lg sum w_i 10^(L_i/10), the weights being shares of the sphere: w_i = (cos(lower edge) - cos(upper edge))/2, edges
/// half-way to the neighbouring angles, half zones at the poles. Coarse grids read low: 0.02 dB for a cardioid every 30 degrees.
/// Source: zonal integration (Beranek, Acoustics, from memory). Checks: published values E9, <c>DirectivityTests</c>.
/// </remarks>
public static class Directivity
{
    /// <summary>Directivity index, dB.</summary>
    /// <param name="polar">Level over angle, from 0 to 180 degrees, angles rising; three or more. Levels must be finite: give a null
    /// its noise floor.</param>
    /// <exception cref="ArgumentException">The angles do not rise from 0 to 180 degrees, or a level is not finite; the message names
    /// the point.</exception>
    public static double IndexDb(IReadOnlyList<PolarPoint> polar)
    {
        ArgumentNullException.ThrowIfNull(polar);
        if (ProblemWith(polar) is { } problem)
            throw new ArgumentException(problem, nameof(polar));
        var sum = 0.0;
        for (var i = 0; i < polar.Count; i++)
        {
            var lower = i == 0 ? 0 : (polar[i - 1].Degrees + polar[i].Degrees) / 2;
            var upper = i == polar.Count - 1 ? 180 : (polar[i].Degrees + polar[i + 1].Degrees) / 2;
            sum += (Cosine(lower) - Cosine(upper)) / 2 * Math.Pow(10, (polar[i].LevelDb - polar[0].LevelDb) / 10);
        }
        return -10 * Math.Log10(sum);
    }

    /// <summary>Front-to-back ratio at one frequency, dB: level on axis less level at 180 degrees.</summary>
    /// <param name="front">Response on axis.</param>
    /// <param name="back">Response from the back, same source and place.</param>
    /// <param name="frequencyHz">Frequency, Hz; greater than zero.</param>
    /// <returns>The ratio; null where either curve has nothing.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A frequency that is not positive, or NaN.</exception>
    public static double? FrontToBackDb(ResponseCurve front, ResponseCurve back, double frequencyHz)
    {
        ArgumentNullException.ThrowIfNull(front);
        ArgumentNullException.ThrowIfNull(back);
        return front.LevelAt(frequencyHz) - back.LevelAt(frequencyHz);
    }

    private static string? ProblemWith(IReadOnlyList<PolarPoint> polar)
    {
        if (polar.Count < 3)
            return AcousticTexts.PolarHasTooFewAngles(polar.Count);
        if (polar[0].Degrees != 0 || polar[^1].Degrees != 180)
            return AcousticTexts.PolarMustRunHalfRound;
        for (var i = 0; i < polar.Count; i++)
        {
            if (!double.IsFinite(polar[i].LevelDb))
                return AcousticTexts.LevelAtAngleIsNoNumber(i + 1);
            if (i > 0 && !(polar[i].Degrees > polar[i - 1].Degrees))
                return AcousticTexts.AnglesMustRise(i + 1);
        }
        return null;
    }

    private static double Cosine(double degrees) => Math.Cos(degrees * Math.PI / 180);
}

/// <summary>Level at one angle.</summary>
/// <param name="Degrees">Angle from the axis, degrees.</param>
/// <param name="LevelDb">Level, dB; the reference does not matter.</param>
public readonly record struct PolarPoint(double Degrees, double LevelDb);
