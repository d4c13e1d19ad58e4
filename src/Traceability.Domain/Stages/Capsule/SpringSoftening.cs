using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Capsule;

/// <summary>
/// How far the polarising voltage lowers the resonance: the field pulls the more the closer the film comes, which takes stiffness away.
/// </summary>
/// <remarks>
/// L = eps0 V^2 a^2 / (2 T d^3). The air load is the same with and without voltage, so the ratio holds in air too, as long as the
/// electrode's own air film is there in both readings. Edge-clamped membrane only. Checks: published values B4.
/// </remarks>
public static class SpringSoftening
{
    /// <summary>
    /// f/f0 of the flat membrane, without unit: sqrt(1 - 2 L / j01^2). Optimistic near pull-in (0.887 where 0.791 is right). Null where the
    /// root is imaginary.
    /// </summary>
    /// <param name="side">The side of the capsule.</param>
    /// <exception cref="ArgumentOutOfRangeException">A radius, gap or tension that is not positive, or a value that is not
    /// finite.</exception>
    public static double? FlatRatio(PolarisedSide side)
    {
        var square = 1 - 2 * side.PullParameter() / (PhysicalConstants.FirstZeroOfJ0 * PhysicalConstants.FirstZeroOfJ0);
        return square >= 0 ? Math.Sqrt(square) : null;
    }

    /// <summary>
    /// f/f0 about the deflected state, without unit: lowest m of phi'' + phi'/x + (m + 2L/(1-u)^3) phi = 0, phi(1) = 0; f/f0 =
    /// sqrt(m)/j01. Goes to 0 at pull-in; null at and above it.
    /// </summary>
    /// <param name="side">The side of the capsule.</param>
    /// <exception cref="ArgumentOutOfRangeException">A radius, gap or tension that is not positive, or a value that is not
    /// finite.</exception>
    public static double? ExactRatio(PolarisedSide side) =>
        side.PullParameter() switch
        {
            0 => 1,
            var pull when pull < PullIn.MembraneParameter => PulledMembrane.FrequencyRatio(pull),
            _ => null,
        };
}
