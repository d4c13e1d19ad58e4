using MathNet.Numerics;
using MathNet.Numerics.Integration;
using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>
/// The integrals behind the coefficients of <see cref="AirLoad"/>, computed.
/// </summary>
/// <remarks>
/// <para>
/// In a baffle, one side: Gamma = Int_0^inf W(k)^2 dk / Int_0^1 phi^2 x dx, W(k) = Int_0^1 phi(x) J0(k x) x dx, phi the shape over x = r/a.
/// Both sides: twice that.
/// </para>
/// <para>
/// Without baffle, both sides: the potential vanishes in the plane outside the disc. With psi_n(x) = C_n P_(2n+1)(sqrt(1 - x^2)),
/// C_n = (sqrt(pi)/2) n!/Gamma(n + 3/2), whose Hankel transforms are j_(2n+1)(k)/k, and b_n = Int_0^1 phi psi_n x dx:
/// Gamma = 8 Sum (4n + 3) b_n^2 / (2 pi Int_0^1 phi^2 x dx).
/// </para>
/// <para>
/// Derived from the Hankel transform of the half-space and from the orthogonality of the spherical Bessel functions. Known cases met:
/// stiff disc in a baffle 8/(3 pi) and without one 8/3 rho a^3 (Rayleigh; Lamb, Hydrodynamics, section 102), clamped plate 0.6689 (Lamb
/// 1920). Checks: published values A4, <c>AirLoadTests</c>.
/// </para>
/// </remarks>
public static class AirLoadIntegrals
{
    /// <summary>W falls as k^-5/2 or faster and the integrand as k^-5, so what lies above is below 1e-11.</summary>
    private const int HighestPanel = 160;

    private const int LegendreTerms = 24;

    /// <summary>Gamma in a baffle, one side.</summary>
    /// <param name="shape">The shape of motion.</param>
    public static double BaffledOneSide(ModeShape shape) =>
        shape is ModeShape.RigidPiston
            ? 8 / (3 * Math.PI) // the transform J1(k)/k falls too slowly to integrate; the closed form is Rayleigh's
            : Nodes.Zip(Transform(shape), (node, w) => node.Weight * w * w).Sum() / Norm(shape);

    /// <summary>Gamma without baffle, both sides together.</summary>
    /// <param name="shape">The shape of motion.</param>
    public static double UnbaffledBothSides(ModeShape shape)
    {
        var sum = 0.0;
        for (var n = 0; n < LegendreTerms; n++)
            sum += (4 * n + 3) * Math.Pow(Projection(shape, n), 2);
        return 8 * sum / (2 * Math.PI * Norm(shape));
    }

    /// <summary>
    /// Where the integrals over k are sampled: Gauss points on panels of half a period, with J0(k) kept because it is dear.
    /// </summary>
    internal static IReadOnlyList<SpectrumNode> Nodes => SampledOnce.Value;

    private static readonly Lazy<SpectrumNode[]> SampledOnce = new(() =>
    {
        var rule = new GaussLegendreRule(0, Math.PI, 20);
        return
        [
            .. from panel in Enumerable.Range(0, HighestPanel)
            from i in Enumerable.Range(0, rule.Order)
            let k = rule.GetAbscissa(i) + panel * Math.PI
            select new SpectrumNode(k, rule.GetWeight(i), SpecialFunctions.BesselJ(0, k)),
        ];
    });

    /// <summary>
    /// Hankel transform of J0(j x) over the disc, j a zero of J0: j J1(j) J0(k) / (j^2 - k^2), at k = j its limit J1(j)^2 / 2.
    /// </summary>
    internal static double[] TransformOfMode(double zero)
    {
        var slope = SpecialFunctions.BesselJ(1, zero);
        return
        [
            .. Nodes.Select(node =>
                Math.Abs(node.K - zero) < 1e-7 ? slope * slope / 2 : zero * slope * node.J0 / (zero * zero - node.K * node.K)
            ),
        ];
    }

    private static double[] Transform(ModeShape shape) =>
        shape switch
        {
            ModeShape.MembraneFundamental => TransformOfMode(PhysicalConstants.FirstZeroOfJ0),
            ModeShape.StaticParabola => [.. Nodes.Select(node => 2 * SpecialFunctions.BesselJ(2, node.K) / Math.Pow(node.K, 2))],
            ModeShape.ClampedPlate => [.. Nodes.Select(node => 8 * SpecialFunctions.BesselJ(3, node.K) / Math.Pow(node.K, 3))],
            _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "is no known shape"),
        };

    private static double Norm(ModeShape shape) =>
        shape switch
        {
            ModeShape.MembraneFundamental => Math.Pow(SpecialFunctions.BesselJ(1, PhysicalConstants.FirstZeroOfJ0), 2) / 2,
            ModeShape.StaticParabola => 1.0 / 6,
            ModeShape.ClampedPlate => 1.0 / 10,
            ModeShape.RigidPiston => 1.0 / 2,
            _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "is no known shape"),
        };

    /// <summary>
    /// b_n. For J0(j x) it is the transform of psi_n at k = j; for powers p of (1 - x^2), with s = sqrt(1 - x^2), C_n Int s^(2p+1) P
    /// ds.
    /// </summary>
    private static double Projection(ModeShape shape, int n) =>
        shape switch
        {
            ModeShape.MembraneFundamental => ProjectionOfMode(PhysicalConstants.FirstZeroOfJ0, n),
            ModeShape.StaticParabola => ProjectionOfPower(1, n),
            ModeShape.ClampedPlate => ProjectionOfPower(2, n),
            ModeShape.RigidPiston => ProjectionOfPower(0, n),
            _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "is no known shape"),
        };

    internal static double ProjectionOfMode(double zero, int n) => SpecialFunctions.SphericalBesselJ(2 * n + 1, zero) / zero;

    private static double ProjectionOfPower(int power, int n)
    {
        // s^(2p+1) has no part along Legendre polynomials of higher degree.
        if (n > power)
            return 0;
        var scale = Math.Sqrt(Math.PI) / 2 * SpecialFunctions.Factorial(n) / SpecialFunctions.Gamma(n + 1.5);
        return scale * GaussLegendreRule.Integrate(s => Math.Pow(s, 2 * power + 1) * Legendre(2 * n + 1, s), 0, 1, 20);
    }

    private static double Legendre(int degree, double s)
    {
        var (before, current) = (1.0, s);
        for (var m = 1; m < degree; m++)
            (before, current) = (current, ((2 * m + 1) * s * current - m * before) / (m + 1));
        return current;
    }
}

/// <summary>One point of an integral over the wave number.</summary>
/// <param name="K">Wave number times radius.</param>
/// <param name="Weight">Weight in the sum.</param>
/// <param name="J0">J0(K).</param>
internal readonly record struct SpectrumNode(double K, double Weight, double J0);
