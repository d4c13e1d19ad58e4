using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.InsulationTest;

/// <summary>Very high resistance from the time a charged capsule takes to lose its voltage.</summary>
/// <remarks>Checks: published value C8-001, <c>InsulationTests</c>.</remarks>
public static class DischargeMethod
{
    /// <summary>R = t / (C ln(V0/V)), ohm.</summary>
    /// <param name="capacitanceF">C, capsule with all stray capacitance, F; greater than zero.</param>
    /// <param name="seconds">t, s; greater than zero.</param>
    /// <param name="startV">V0, V; greater than V.</param>
    /// <param name="endV">V, V; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, no fall of the voltage, or NaN.</exception>
    public static double ResistanceOhm(double capacitanceF, double seconds, double startV, double endV)
    {
        if (!(Require.Positive(endV) < Require.Positive(startV)))
            throw new ArgumentOutOfRangeException(nameof(endV), endV, "must be below the starting voltage");
        return Require.Positive(seconds) / (Require.Positive(capacitanceF) * Math.Log(startV / endV));
    }

    /// <summary>
    /// Settling time constant, s: tau = R C, with R the protection resistor for an electrometer with feedback, and the unknown itself for a
    /// voltage divider. The electrification time should be five of them.
    /// </summary>
    /// <param name="resistanceOhm">R, ohm; greater than zero.</param>
    /// <param name="capacitanceF">C, F; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double SettlingSeconds(double resistanceOhm, double capacitanceF) =>
        Require.Positive(resistanceOhm) * Require.Positive(capacitanceF);
}
