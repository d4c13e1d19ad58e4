using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.InsulationTest;

/// <summary>
/// How a reading rises while the voltage stays on: resistance late over resistance early, without unit.
/// </summary>
/// <remarks>
/// 60 s over 30 s is called the dielectric absorption ratio, 10 min over 1 min the polarisation index (IEEE 43, for rotating machines,
/// from memory; the first is a habit and not in it). For a capsule of some 100 pF both only tell whether the reading still moved; no
/// limit of IEEE 43 applies. Checks: published values C2, C3.
/// </remarks>
public static class InsulationRatios
{
    /// <summary>Late over early resistance; null when either is only a lower bound.</summary>
    /// <param name="early">Reading at the earlier time; greater than zero.</param>
    /// <param name="late">Reading at the later time, at the same voltage.</param>
    /// <exception cref="ArgumentOutOfRangeException">A resistance that is not positive, or NaN.</exception>
    public static double? LateOverEarly(InsulationResistance early, InsulationResistance late) =>
        early.IsGreaterThan || late.IsGreaterThan
            ? null
            : Require.Positive(late.Ohm, nameof(late)) / Require.Positive(early.Ohm, nameof(early));

    /// <summary>The same from the currents at one voltage: I_early / I_late.</summary>
    /// <param name="earlyA">Current at the earlier time, A; greater than zero.</param>
    /// <param name="lateA">Current at the later time, A; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A current that is not positive, or NaN.</exception>
    public static double FromCurrents(double earlyA, double lateA) => Require.Positive(earlyA) / Require.Positive(lateA);
}
