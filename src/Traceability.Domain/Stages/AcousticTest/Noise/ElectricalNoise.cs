using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.AcousticTest.Noise;

/// <summary>Thermal noise and harmonic distortion.</summary>
/// <remarks>Checks: published values E15, E16.</remarks>
public static class ElectricalNoise
{
    /// <summary>Thermal noise voltage of a resistance, V rms: sqrt(4 k T R B).</summary>
    /// <param name="resistanceOhm">R, ohm; greater than zero.</param>
    /// <param name="bandwidthHz">B, Hz; greater than zero.</param>
    /// <param name="temperatureK">T, K; greater than zero.</param>
    /// <remarks>Source: Nyquist, Phys. Rev. 32 (1928) 110.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double ThermalV(double resistanceOhm, double bandwidthHz, double temperatureK) =>
        Math.Sqrt(
            4
                * PhysicalConstants.BoltzmannJPerK
                * Require.Positive(temperatureK)
                * Require.Positive(resistanceOhm)
                * Require.Positive(bandwidthHz)
        );

    /// <summary>Total harmonic distortion re the fundamental, without unit: sqrt(sum of U_n^2, n from 2) / U_1.</summary>
    /// <param name="harmonicsV">Fundamental (greater than zero) and harmonics (not negative), V rms; two or more.</param>
    /// <remarks>Source: IEC 60268-3, from memory; that standard also has the form re the whole signal, which is not this one.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Too few values, a fundamental that is not positive, a negative one, or
    /// NaN.</exception>
    public static double HarmonicDistortion(params ReadOnlySpan<double> harmonicsV)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(harmonicsV.Length, 2, nameof(harmonicsV));
        var sum = 0.0;
        foreach (var volts in harmonicsV[1..])
            sum += Math.Pow(Require.NotNegative(volts, nameof(harmonicsV)), 2);
        return Math.Sqrt(sum) / Require.Positive(harmonicsV[0], nameof(harmonicsV));
    }
}
