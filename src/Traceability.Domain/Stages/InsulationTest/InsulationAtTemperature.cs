namespace Traceability.Domain.Stages.InsulationTest;

/// <summary>
/// Resistance referred to another temperature, halving every 10 K: R(T_ref) = R(T) 0.5^((T_ref - T)/10), ohm.
/// </summary>
/// <remarks>
/// For information only, never for the verdict: surface leakage, which is what a soak provokes, does not follow it. Source: IEEE 43,
/// factor for thermoplastic insulation, from memory. Checks: published values C4.
/// </remarks>
public static class InsulationAtTemperature
{
    /// <summary>Resistance at the reference temperature, ohm; "greater than" stays so.</summary>
    /// <param name="measured">R(T); not negative.</param>
    /// <param name="measuredAtC">T, °C.</param>
    /// <param name="referenceC">T_ref, °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">A negative resistance, a temperature below absolute zero, or NaN.</exception>
    public static InsulationResistance ReferredTo(InsulationResistance measured, double measuredAtC, double referenceC)
    {
        var warmerK = Require.TemperatureC(referenceC) - Require.TemperatureC(measuredAtC);
        return measured with { Ohm = Require.NotNegative(measured.Ohm, nameof(measured)) * Math.Pow(0.5, warmerK / 10) };
    }
}
