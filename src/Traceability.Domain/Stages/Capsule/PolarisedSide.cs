using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Capsule;

/// <summary>One side of a capsule under its polarising voltage: an edge-clamped membrane before a full electrode.</summary>
/// <param name="VoltageV">V, polarising voltage, V; its sign does not matter.</param>
/// <param name="RadiusM">a, active radius, m.</param>
/// <param name="GapM">d, gap without voltage, m.</param>
/// <param name="TensionNPerM">T, tension, N/m.</param>
public readonly record struct PolarisedSide(double VoltageV, double RadiusM, double GapM, double TensionNPerM)
{
    /// <summary>
    /// L = eps0 V^2 a^2 / (2 T d^3), without unit: electrostatic pull over restoring tension. Above <see cref="PullIn.MembraneParameter"/>
    /// the film has no resting place.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A radius, gap or tension that is not positive, or a value that is not
    /// finite.</exception>
    public double PullParameter() =>
        PhysicalConstants.VacuumPermittivityFPerM
        * Require.Finite(VoltageV)
        * VoltageV
        * Require.Positive(RadiusM)
        * RadiusM
        / (2 * Require.Positive(TensionNPerM) * Math.Pow(Require.Positive(GapM), 3));
}
