using System.Numerics;
using Traceability.Domain.Stages.AcousticTest.Directions;
using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.AcousticTest.Sensitivities;

/// <summary>
/// What a source close by does to a microphone that hears pressure gradient: the gradient grows by 1 + 1/(j k r).
/// </summary>
/// <remarks>
/// k = 2 pi f / c; r distance from a point source, m. At 1 m and 100 Hz a cardioid reads 0.31 dB too much: the distance belongs on the
/// certificate. Source: spherical wave (Beranek, Acoustics, from memory). Checks: published values E13.
/// </remarks>
public static class NearField
{
    /// <summary>Rise of the pure gradient, dB: 20 lg sqrt(1 + 1/(k r)^2).</summary>
    /// <param name="frequencyHz">f, Hz; greater than zero.</param>
    /// <param name="distanceM">r, m; greater than zero.</param>
    /// <param name="speedOfSoundMPerS">c, m/s; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double GradientRiseDb(double frequencyHz, double distanceM, double speedOfSoundMPerS) =>
        AxialRiseDb(new(0), frequencyHz, distanceM, speedOfSoundMPerS);

    /// <summary>Rise of a first-order pattern on its axis, dB: 20 lg |A + B (1 + 1/(j k r))|.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="frequencyHz">f, Hz; greater than zero.</param>
    /// <param name="distanceM">r, m; greater than zero.</param>
    /// <param name="speedOfSoundMPerS">c, m/s; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double AxialRiseDb(FirstOrderPattern pattern, double frequencyHz, double distanceM, double speedOfSoundMPerS)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        var kr = 2 * Math.PI * Require.Positive(frequencyHz) / Require.Positive(speedOfSoundMPerS) * Require.Positive(distanceM);
        return 20 * Math.Log10((pattern.A + pattern.B * (1 + 1 / new Complex(0, kr))).Magnitude);
    }

    /// <summary>Level by distance from a point source, dB: 20 lg(from / to).</summary>
    /// <param name="fromM">Distance to begin with, m; greater than zero.</param>
    /// <param name="toM">Distance to end with, m; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double DistanceDb(double fromM, double toM) => 20 * Math.Log10(Require.Positive(fromM) / Require.Positive(toM));
}
