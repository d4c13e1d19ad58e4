using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Capsule;

/// <summary>
/// Sensitivity of a capsule with nothing but the tension of its film: S = V a^2 / (8 T d), V/Pa.
/// </summary>
/// <remarks>
/// Mean static displacement over gap, times the voltage. Real capsules are held back by acoustic resistance, a rear path or a cavity,
/// so this is an upper bound, usually 10 to 30 dB above the finished microphone: for trends only (S goes with V, 1/d, 1/T). Derived
/// from the capacitor at constant charge. Checks: published values B7, B9.
/// </remarks>
public static class TensionSensitivity
{
    /// <summary>S, V/Pa.</summary>
    /// <param name="side">The side of the capsule; its voltage is taken without sign.</param>
    /// <exception cref="ArgumentOutOfRangeException">A radius, gap or tension that is not positive, or a value that is not
    /// finite.</exception>
    public static double VPerPa(PolarisedSide side) =>
        Math.Abs(Require.Finite(side.VoltageV))
        * Require.Positive(side.RadiusM)
        * side.RadiusM
        / (8 * Require.Positive(side.TensionNPerM) * Require.Positive(side.GapM));

    /// <summary>S as level, dB re 1 V/Pa.</summary>
    /// <param name="side">The side of the capsule; its voltage must not be zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A voltage of zero, a radius, gap or tension that is not positive, or NaN.</exception>
    public static double LevelDb(PolarisedSide side) => 20 * Math.Log10(Require.Positive(VPerPa(side), nameof(side)));

    /// <summary>Change of sensitivity by a change of the gap at unchanged compliance, dB: 20 lg(d / (d + dd)).</summary>
    /// <param name="gapM">d, m; greater than zero.</param>
    /// <param name="changeM">dd, m; leaves a gap greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">No gap left, or NaN.</exception>
    public static double ChangeByGapDb(double gapM, double changeM) =>
        20 * Math.Log10(Require.Positive(gapM) / Require.Positive(gapM + changeM, nameof(changeM)));

    /// <summary>Change of sensitivity by a change of the polarising voltage, dB: 20 lg(V1 / V0).</summary>
    /// <param name="fromV">V0, V; greater than zero.</param>
    /// <param name="toV">V1, V; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double ChangeByVoltageDb(double fromV, double toV) => 20 * Math.Log10(Require.Positive(toV) / Require.Positive(fromV));
}
