using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.ClimateSoak;

/// <summary>
/// A part that follows the air with one time constant: tau dT/dt = T_air - T.
/// </summary>
/// <remarks>Valid for a small part in moving air (no inner temperature difference). Check: published value D9-001.</remarks>
public static class SpecimenLag
{
    /// <summary>
    /// Time until the part is within a band of the new temperature after a step: t = tau ln(|Tf - T0| / band), zero when it already is.
    /// </summary>
    /// <param name="startC">Temperature T0 of the part, °C.</param>
    /// <param name="finalC">Temperature Tf of the air after the step, °C.</param>
    /// <param name="timeConstantMinutes">tau, min; greater than zero.</param>
    /// <param name="bandK">Band, K; greater than zero (3 K in IEC 60068-1, from memory).</param>
    /// <exception cref="ArgumentOutOfRangeException">A temperature below absolute zero, or a tau or band that is not positive.</exception>
    public static double MinutesToWithin(double startC, double finalC, double timeConstantMinutes, double bandK)
    {
        Require.TemperatureC(startC);
        Require.TemperatureC(finalC);
        Require.Positive(timeConstantMinutes);
        Require.Positive(bandK);
        return Math.Max(0, timeConstantMinutes * Math.Log(Math.Abs(finalC - startC) / bandK));
    }

    /// <summary>
    /// Temperature of the part one log step later, °C, exact for air that changes along a straight line:
    /// T1 = A1 - s tau + (T0 - A0 + s tau) exp(-dt/tau), s = (A1 - A0)/dt.
    /// </summary>
    /// <param name="partC">T0, temperature of the part at the start of the step, °C.</param>
    /// <param name="airBeforeC">A0, air at the start, °C.</param>
    /// <param name="airAfterC">A1, air at the end, °C.</param>
    /// <param name="stepMinutes">dt, min; greater than zero.</param>
    /// <param name="timeConstantMinutes">tau, min; greater than zero.</param>
    public static double Follow(double partC, double airBeforeC, double airAfterC, double stepMinutes, double timeConstantMinutes)
    {
        Require.Positive(stepMinutes);
        Require.Positive(timeConstantMinutes);
        var lagK = (airAfterC - airBeforeC) / stepMinutes * timeConstantMinutes;
        return airAfterC - lagK + (partC - airBeforeC + lagK) * Math.Exp(-stepMinutes / timeConstantMinutes);
    }
}
