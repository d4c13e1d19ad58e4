using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.AcousticTest.Sensitivities;

/// <summary>
/// Sensitivity by substitution for a reference microphone: L_x = L_ref + 20 lg(U_x / U_ref) + corrections.
/// </summary>
/// <remarks>
/// Same source, same place, same level, one after the other. Corrections for temperature, pressure, load and distance are added, signed.
/// Source: the way of IEC 61094-8 (comparison in the free field), from memory. Checks: published values E2.
/// </remarks>
public static class ComparisonCalibration
{
    /// <summary>Sensitivity level, dB re 1 V/Pa.</summary>
    /// <param name="referenceLevelDb">L_ref, dB re 1 V/Pa.</param>
    /// <param name="referenceV">U_ref, output of the reference, V; greater than zero.</param>
    /// <param name="measuredV">U_x, output of the microphone under test, V; greater than zero.</param>
    /// <param name="correctionsDb">Corrections, dB, signed.</param>
    /// <exception cref="ArgumentOutOfRangeException">A voltage that is not positive, or a value that is not finite.</exception>
    public static double LevelDb(double referenceLevelDb, double referenceV, double measuredV, params ReadOnlySpan<double> correctionsDb)
    {
        var level = Require.Finite(referenceLevelDb) + 20 * Math.Log10(Require.Positive(measuredV) / Require.Positive(referenceV));
        foreach (var correction in correctionsDb)
            level += Require.Finite(correction, nameof(correctionsDb));
        return level;
    }

    /// <summary>Correction of the reference microphone for the air of the moment, dB: kT (t - t0) + kP (p - p0).</summary>
    /// <param name="decibelPerK">kT, dB/K, signed.</param>
    /// <param name="decibelPerKpa">kP, dB/kPa, signed; usually below zero.</param>
    /// <param name="now">Air of the moment, compared with <see cref="Ambient.Reference"/>.</param>
    /// <remarks>Linear, as calibrations state it. Source: IEC 61094-4, static pressure and temperature coefficients, from memory.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value that is not finite.</exception>
    public static double ReferenceInAirDb(double decibelPerK, double decibelPerKpa, Ambient now) =>
        Require.Finite(decibelPerK) * (Require.Finite(now.TemperatureC) - Ambient.Reference.TemperatureC)
        + Require.Finite(decibelPerKpa) * (Require.Finite(now.PressurePa) - Ambient.Reference.PressurePa) / 1000;

    /// <summary>Combined standard uncertainty of independent contributions in one unit: root of the sum of squares.</summary>
    /// <param name="contributions">Standard uncertainties, not negative; at least one.</param>
    /// <remarks>Source: JCGM 100, 5.1.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">None, a negative one, or NaN.</exception>
    public static double CombinedUncertainty(params ReadOnlySpan<double> contributions)
    {
        ArgumentOutOfRangeException.ThrowIfZero(contributions.Length, nameof(contributions));
        var sum = 0.0;
        foreach (var part in contributions)
            sum += Math.Pow(Require.NotNegative(part, nameof(contributions)), 2);
        return Math.Sqrt(sum);
    }
}
