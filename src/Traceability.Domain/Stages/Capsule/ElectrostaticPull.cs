using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Capsule;

/// <summary>
/// How far the polarising voltage pulls the film towards the electrode, and what field acts there.
/// </summary>
/// <remarks>
/// Valid for an edge-clamped membrane before a full electrode; not for a film fixed at its centre. Checks: published values B2, B10.
/// </remarks>
public static class ElectrostaticPull
{
    /// <summary>
    /// Centre deflection to first order, m: eps0 V^2 a^2 / (8 T d^2). Low by 14 % at 60 V in a usual capsule; good for trends.
    /// </summary>
    /// <param name="side">The side of the capsule.</param>
    /// <exception cref="ArgumentOutOfRangeException">A radius, gap or tension that is not positive, or a value that is not
    /// finite.</exception>
    public static double FirstOrderDeflectionM(PolarisedSide side) => side.PullParameter() / 4 * side.GapM;

    /// <summary>
    /// Exact centre deflection, m: the stable solution of u'' + u'/x = -L/(1-u)^2, u'(0) = u(1) = 0, u = w/d. Null when the voltage is
    /// at or above pull-in: the film has no resting place.
    /// </summary>
    /// <param name="side">The side of the capsule.</param>
    /// <exception cref="ArgumentOutOfRangeException">A radius, gap or tension that is not positive, or a value that is not
    /// finite.</exception>
    public static double? DeflectionM(PolarisedSide side) =>
        side.PullParameter() switch
        {
            0 => 0,
            var pull when pull < PullIn.MembraneParameter => PulledMembrane.CentreShare(pull) * side.GapM,
            _ => null,
        };

    /// <summary>Mean field in the gap, V/m: V / d.</summary>
    /// <param name="voltageV">V, V.</param>
    /// <param name="gapM">d, m; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A gap that is not positive, or a value that is not finite.</exception>
    public static double FieldVPerM(double voltageV, double gapM) => Require.Finite(voltageV) / Require.Positive(gapM);

    /// <summary>Electrostatic pressure on the film, Pa: eps0 V^2 / (2 d^2).</summary>
    /// <param name="voltageV">V, V.</param>
    /// <param name="gapM">d, m; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A gap that is not positive, or a value that is not finite.</exception>
    public static double PressurePa(double voltageV, double gapM) =>
        PhysicalConstants.VacuumPermittivityFPerM / 2 * Math.Pow(FieldVPerM(voltageV, gapM), 2);
}
