using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Capsule;

/// <summary>
/// Low corner that capsule and bias resistor make: f_c = 1 / (2 pi R C).
/// </summary>
/// <remarks>
/// R all resistances to ground in parallel, ohm; C capsule and stray, F. First-order high-pass. Checks: published values B5.
/// </remarks>
public static class LowCorner
{
    /// <summary>Corner, Hz.</summary>
    /// <param name="resistanceOhm">R, ohm; greater than zero.</param>
    /// <param name="capacitanceF">C, F; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double CornerHz(double resistanceOhm, double capacitanceF) =>
        1 / (2 * Math.PI * Require.Positive(resistanceOhm) * Require.Positive(capacitanceF));

    /// <summary>Level at a frequency against that far above the corner, dB: -10 lg(1 + (f_c/f)^2).</summary>
    /// <param name="frequencyHz">f, Hz; greater than zero.</param>
    /// <param name="cornerHz">f_c, Hz; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double LevelDb(double frequencyHz, double cornerHz) =>
        -10 * Math.Log10(1 + Math.Pow(Require.Positive(cornerHz) / Require.Positive(frequencyHz), 2));

    /// <summary>Resistances in parallel, ohm.</summary>
    /// <param name="resistancesOhm">One or more, each greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">None, or one that is not positive, or NaN.</exception>
    public static double InParallelOhm(params ReadOnlySpan<double> resistancesOhm)
    {
        ArgumentOutOfRangeException.ThrowIfZero(resistancesOhm.Length, nameof(resistancesOhm));
        var conductance = 0.0;
        foreach (var ohm in resistancesOhm)
            conductance += 1 / Require.Positive(ohm, nameof(resistancesOhm));
        return 1 / conductance;
    }
}
