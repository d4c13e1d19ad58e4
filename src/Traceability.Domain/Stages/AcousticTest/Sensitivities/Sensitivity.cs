using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.AcousticTest.Sensitivities;

/// <summary>
/// Units of sensitivity and level: L = 20 lg(S / (1 V/Pa)).
/// </summary>
/// <remarks>
/// 1 Pa is 93.9794 dB re 20 µPa; the usual "94 dB" is rounded by 0.0206 dB. dBu is re the voltage of 1 mW in 600 ohms, sqrt(0.6) V.
/// Checks: published values E1, <c>SensitivityTests</c>.
/// </remarks>
public static class Sensitivity
{
    /// <summary>1 Pa as sound pressure level, dB re 20 µPa.</summary>
    public static double OnePascalDb => 20 * Math.Log10(1 / PhysicalConstants.ReferencePressurePa);

    /// <summary>Level of a sensitivity, dB re 1 V/Pa.</summary>
    /// <param name="millivoltPerPascal">S, mV/Pa; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A sensitivity that is not positive, or NaN.</exception>
    public static double LevelDbRe1VPerPa(double millivoltPerPascal) => 20 * Math.Log10(Require.Positive(millivoltPerPascal) / 1000);

    /// <summary>Level of a sensitivity, dB re 1 mV/Pa.</summary>
    /// <param name="millivoltPerPascal">S, mV/Pa; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A sensitivity that is not positive, or NaN.</exception>
    public static double LevelDbRe1MvPerPa(double millivoltPerPascal) => LevelDbRe1VPerPa(millivoltPerPascal) + 60;

    /// <summary>Sensitivity of a level, mV/Pa.</summary>
    /// <param name="levelDbRe1VPerPa">L, dB re 1 V/Pa.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static double MillivoltPerPascal(double levelDbRe1VPerPa) => 1000 * Math.Pow(10, Require.Finite(levelDbRe1VPerPa) / 20);

    /// <summary>Output level, dB re 1 V: L + L_p - 93.9794.</summary>
    /// <param name="levelDbRe1VPerPa">L, sensitivity, dB re 1 V/Pa.</param>
    /// <param name="soundPressureLevelDb">L_p, dB re 20 µPa.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static double OutputDbV(double levelDbRe1VPerPa, double soundPressureLevelDb) =>
        Require.Finite(levelDbRe1VPerPa) + Require.Finite(soundPressureLevelDb) - OnePascalDb;

    /// <summary>Output level, dBu: the one re 1 V plus 2.2185 dB.</summary>
    /// <param name="levelDbRe1VPerPa">L, sensitivity, dB re 1 V/Pa.</param>
    /// <param name="soundPressureLevelDb">L_p, dB re 20 µPa.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static double OutputDbu(double levelDbRe1VPerPa, double soundPressureLevelDb) =>
        OutputDbV(levelDbRe1VPerPa, soundPressureLevelDb) - 10 * Math.Log10(0.6);
}
