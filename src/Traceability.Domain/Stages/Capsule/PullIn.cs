using MathNet.Numerics.RootFinding;
using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Capsule;

/// <summary>
/// The voltage at which the film falls onto the electrode: V_PI = k sqrt(T d^3 / (eps0 a^2)).
/// </summary>
/// <remarks>
/// <para>
/// Exact for an edge-clamped membrane: fold of the boundary problem of <see cref="ElectrostaticPull"/> at L* = 0.789229, w0/d = 0.444292,
/// so k = sqrt(2 L*) = 1.256367. Not for a film fixed at its centre. Take the tension with the air load: without it collapse is announced
/// far too early.
/// </para>
/// <para>
/// The plate on a spring, k x = eps0 A V^2 / (2 (d - x)^2), folds at x = d/3: k = sqrt(64/27) with the stiffness of the mean displacement
/// (22.5 % too high: unsafe), sqrt(32/27) with that of the centre (13.3 % too low). Source: Pelesko and Bernstein, Modeling MEMS and NEMS,
/// 0.789 for the unit disc (from memory). Checks: published values B3.
/// </para>
/// </remarks>
public static class PullIn
{
    /// <summary>Share of the pull-in voltage that is used at most. Common practice, no source.</summary>
    public const double UsualShare = 0.8;

    /// <summary>L*, greatest eps0 V^2 a^2 / (2 T d^3) with a resting place, without unit.</summary>
    public static double MembraneParameter => PulledMembrane.Fold.Pull;

    /// <summary>w0/d at pull-in, without unit.</summary>
    public static double MembraneCentreShare => PulledMembrane.Fold.CentreShare;

    /// <summary>k of the exact membrane, sqrt(2 L*).</summary>
    public static double MembraneCoefficient => Math.Sqrt(2 * MembraneParameter);

    /// <summary>k of the plate with the stiffness 8 pi T of the mean displacement, sqrt(64/27). Too high; for comparison only.</summary>
    public static double MeanStiffnessCoefficient => Math.Sqrt(64.0 / 27);

    /// <summary>k of the plate with the stiffness 4 pi T of the centre, sqrt(32/27). Too low; for comparison only.</summary>
    public static double CentreStiffnessCoefficient => Math.Sqrt(32.0 / 27);

    /// <summary>
    /// w0/d at pull-in of a film held to a parabola, for comparison: with g = w0/d the energy, over pi T d^2, is
    /// g^2 - L F(g), F = -ln(1 - g)/g, and the fold is where L(g) = 2 g / F'(g) is greatest.
    /// </summary>
    public static double ParabolaCentreShare { get; } = Brent.FindRoot(RitzSlope, 0.2, 0.7, 1e-13, 200);

    /// <summary>L of the parabola estimate at its fold, without unit; 5 % above L*, which is 2.4 % in voltage.</summary>
    public static double ParabolaParameter { get; } = RitzPull(ParabolaCentreShare);

    /// <summary>Pull-in voltage of the exact membrane, V.</summary>
    /// <param name="radiusM">a, m; greater than zero.</param>
    /// <param name="gapM">d, m; greater than zero.</param>
    /// <param name="tensionNPerM">T, N/m; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double VoltageV(double radiusM, double gapM, double tensionNPerM) =>
        VoltageV(MembraneCoefficient, radiusM, gapM, tensionNPerM);

    /// <summary>Pull-in voltage with another coefficient, V.</summary>
    /// <param name="coefficient">k, without unit; greater than zero.</param>
    /// <param name="radiusM">a, m; greater than zero.</param>
    /// <param name="gapM">d, m; greater than zero.</param>
    /// <param name="tensionNPerM">T, N/m; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double VoltageV(double coefficient, double radiusM, double gapM, double tensionNPerM) =>
        Require.Positive(coefficient)
        / Require.Positive(radiusM)
        * Math.Sqrt(Require.Positive(tensionNPerM) * Math.Pow(Require.Positive(gapM), 3) / PhysicalConstants.VacuumPermittivityFPerM);

    /// <summary>Share of the pull-in voltage in use, |V| / V_PI, without unit; at or above 1 the film lies on the electrode.</summary>
    /// <param name="side">The side of the capsule.</param>
    /// <exception cref="ArgumentOutOfRangeException">A radius, gap or tension that is not positive, or a value that is not
    /// finite.</exception>
    public static double ShareInUse(PolarisedSide side) => Math.Sqrt(side.PullParameter() / MembraneParameter);

    /// <summary>Least tension for which V stays at a given share of pull-in, N/m: T = eps0 a^2 (V / (share k))^2 / d^3.</summary>
    /// <param name="voltageV">V, V; not zero.</param>
    /// <param name="radiusM">a, m; greater than zero.</param>
    /// <param name="gapM">d, m; greater than zero.</param>
    /// <param name="share">Share of the pull-in voltage; above 0, at most 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double LeastTensionNPerM(double voltageV, double radiusM, double gapM, double share = UsualShare)
    {
        Require.Positive(Math.Abs(voltageV), nameof(voltageV));
        Require.Within(share, double.Epsilon, 1);
        return PhysicalConstants.VacuumPermittivityFPerM
            * Math.Pow(Require.Positive(radiusM) * voltageV / (share * MembraneCoefficient), 2)
            / Math.Pow(Require.Positive(gapM), 3);
    }

    private static double RitzForce(double g) => (g / (1 - g) + Math.Log(1 - g)) / (g * g);

    private static double RitzPull(double g) => 2 * g / RitzForce(g);

    /// <summary>Sign of d(2g/F')/dg, by a central difference: F' - g F''.</summary>
    private static double RitzSlope(double g)
    {
        const double h = 1e-4;
        return RitzForce(g) - g * (8 * (RitzForce(g + h) - RitzForce(g - h)) - (RitzForce(g + 2 * h) - RitzForce(g - 2 * h))) / (12 * h);
    }
}
