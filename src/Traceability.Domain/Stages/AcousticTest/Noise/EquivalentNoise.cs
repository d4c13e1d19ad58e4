using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.AcousticTest.Noise;

/// <summary>
/// Noise of a microphone as the sound level that would give the same output: L = 20 lg(U / (S p0)).
/// </summary>
/// <remarks>
/// U_A = sqrt(sum U_i^2 10^(A_i/10)) over bands with rms voltage U_i, p0 = 20 µPa. Source: IEC 60268-4, clause 17, with the A-weighting of
/// IEC 61672-1. Quasi-peak values are something else and are not to be mixed in. Checks: published values E5.
/// </remarks>
public static class EquivalentNoise
{
    /// <summary>A-weighted voltage of a band spectrum, V.</summary>
    /// <param name="bands">Exact mid-band frequency, Hz, and rms voltage, V (not negative), of each band; at least one.</param>
    /// <exception cref="ArgumentOutOfRangeException">No band, a frequency that is not positive, a negative voltage, or NaN.</exception>
    public static double AWeightedV(IReadOnlyList<BandVoltage> bands) => Sum(bands, FrequencyWeighting.APower);

    /// <summary>Unweighted voltage of a band spectrum, V.</summary>
    /// <param name="bands">Exact mid-band frequency, Hz, and rms voltage, V (not negative), of each band; at least one.</param>
    /// <exception cref="ArgumentOutOfRangeException">No band, a frequency that is not positive, a negative voltage, or NaN.</exception>
    public static double UnweightedV(IReadOnlyList<BandVoltage> bands) => Sum(bands, _ => 1);

    /// <summary>Equivalent sound pressure level, dB re 20 µPa.</summary>
    /// <param name="noiseV">U, V, weighted or not, as the record says; greater than zero.</param>
    /// <param name="sensitivityVPerPa">S, V/Pa; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive (a silent recording has no level), or NaN.</exception>
    public static double LevelDb(double noiseV, double sensitivityVPerPa) =>
        20 * Math.Log10(Require.Positive(noiseV) / (Require.Positive(sensitivityVPerPa) * PhysicalConstants.ReferencePressurePa));

    private static double Sum(IReadOnlyList<BandVoltage> bands, Func<double, double> weight)
    {
        ArgumentNullException.ThrowIfNull(bands);
        ArgumentOutOfRangeException.ThrowIfZero(bands.Count, nameof(bands));
        var sum = 0.0;
        foreach (var (frequencyHz, volts) in bands)
            sum += Math.Pow(Require.NotNegative(volts, nameof(bands)), 2) * weight(Require.Positive(frequencyHz, nameof(bands)));
        return Math.Sqrt(sum);
    }
}

/// <summary>Voltage in one band.</summary>
/// <param name="MidHz">Exact mid-band frequency, Hz.</param>
/// <param name="Volts">Rms voltage, V.</param>
public readonly record struct BandVoltage(double MidHz, double Volts);
