using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.AcousticTest.Noise;

/// <summary>A level with the noise of the station taken off, or the statement that it is not more than a value.</summary>
/// <param name="LevelDb">The level, dB.</param>
/// <param name="IsAtMost">True for "not more than": the station was too loud to tell.</param>
/// <remarks>Check: published value E5-006.</remarks>
public readonly record struct BackgroundNoise(double LevelDb, bool IsAtMost)
{
    /// <summary>How far the station must lie below the whole, dB, for a subtraction to mean anything.</summary>
    public const double LeastDistanceDb = 3;

    /// <summary>
    /// Takes the station's noise off on a power basis, dB: 10 lg(10^(L/10) - 10^(B/10)), when the whole is 3 dB or more above it; else the
    /// whole stands as "not more than".
    /// </summary>
    /// <param name="wholeDb">L, microphone and station, dB.</param>
    /// <param name="stationDb">B, station alone, in the same unit, dB.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static BackgroundNoise Subtract(double wholeDb, double stationDb)
    {
        var distance = Require.Finite(wholeDb) - Require.Finite(stationDb);
        return distance < LeastDistanceDb ? new(wholeDb, true) : new(wholeDb + 10 * Math.Log10(1 - Math.Pow(10, -distance / 10)), false);
    }
}
