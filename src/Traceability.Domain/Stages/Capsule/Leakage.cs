using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Capsule;

/// <summary>
/// What a leakage resistance across the capsule does: it divides the polarising voltage with the bias resistor, raises the corner and
/// makes noise.
/// </summary>
/// <remarks>
/// R_b bias resistor, R_L leakage, ohm; C capsule, F; T temperature, K. Sources: voltage divider; Johnson and Nyquist 1928 for the noise.
/// Checks: published values B6.
/// </remarks>
public static class Leakage
{
    /// <summary>Direct voltage left on the capsule, V: V R_L / (R_L + R_b).</summary>
    /// <param name="voltageV">V, V.</param>
    /// <param name="biasOhm">R_b, ohm; greater than zero.</param>
    /// <param name="leakageOhm">R_L, ohm; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A resistance that is not positive, or a value that is not finite.</exception>
    public static double CapsuleVoltageV(double voltageV, double biasOhm, double leakageOhm) =>
        Require.Finite(voltageV) * Require.Positive(leakageOhm) / (leakageOhm + Require.Positive(biasOhm));

    /// <summary>Change of sensitivity, dB: 20 lg(R_L / (R_L + R_b)); sensitivity goes with the voltage.</summary>
    /// <param name="biasOhm">R_b, ohm; greater than zero.</param>
    /// <param name="leakageOhm">R_L, ohm; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double SensitivityChangeDb(double biasOhm, double leakageOhm) => 20 * Math.Log10(CapsuleVoltageV(1, biasOhm, leakageOhm));

    /// <summary>Low corner with leakage, Hz: that of R_b and R_L in parallel.</summary>
    /// <param name="biasOhm">R_b, ohm; greater than zero.</param>
    /// <param name="leakageOhm">R_L, ohm; greater than zero.</param>
    /// <param name="capacitanceF">C, F; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double CornerHz(double biasOhm, double leakageOhm, double capacitanceF) =>
        LowCorner.CornerHz(LowCorner.InParallelOhm(biasOhm, leakageOhm), capacitanceF);

    /// <summary>Current noise density of a resistance, A/√Hz: sqrt(4 k T / R).</summary>
    /// <param name="temperatureK">T, K; greater than zero.</param>
    /// <param name="resistanceOhm">R, ohm; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double CurrentNoiseAPerRootHz(double temperatureK, double resistanceOhm) =>
        Math.Sqrt(4 * PhysicalConstants.BoltzmannJPerK * Require.Positive(temperatureK) / Require.Positive(resistanceOhm));

    /// <summary>Whole noise voltage that resistances make on the capsule, V: sqrt(k T / C), whatever their value.</summary>
    /// <param name="temperatureK">T, K; greater than zero.</param>
    /// <param name="capacitanceF">C, F; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double NoiseOnCapsuleV(double temperatureK, double capacitanceF) =>
        Math.Sqrt(PhysicalConstants.BoltzmannJPerK * Require.Positive(temperatureK) / Require.Positive(capacitanceF));
}
