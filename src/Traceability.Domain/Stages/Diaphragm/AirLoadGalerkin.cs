using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;
using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>
/// Resonance in air with the shape left free: the film takes a mixture of the first axisymmetric modes J0(j_0n x) instead of the first
/// alone.
/// </summary>
/// <remarks>
/// Eigenproblem K c = lambda (N + mu G) c, N_n = J1(j_n)^2 / 2, K_n = j_n^2 N_n, G the added mass between the modes by the integrals of
/// <see cref="AirLoadIntegrals"/>; f_air / f_vac = sqrt(lambda_min) / j01. With ten modes converged to 1e-5. It exists to show how
/// little the one-mode formula of <see cref="AirLoad"/> errs; same validity. Checks: published values A5 ("10-mode Galerkin").
/// </remarks>
public static class AirLoadGalerkin
{
    /// <summary>f_air / f_vac, without unit.</summary>
    /// <param name="baffle">How the film is mounted.</param>
    /// <param name="massRatio">mu = rho a / sigma; not negative.</param>
    /// <param name="modes">Number of modes; 1 to 20.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double FrequencyRatio(BaffleCondition baffle, double massRatio, int modes = 10)
    {
        Require.NotNegative(massRatio);
        Require.Within(modes, 1, 20);
        var zeros = Enumerable.Range(1, modes).Select(n => MembraneModes.BesselZero(0, n)).ToArray();
        var norms = zeros.Select(z => Math.Pow(SpecialFunctions.BesselJ(1, z), 2) / 2).ToArray();
        var air = baffle is BaffleCondition.Unbaffled ? Unbaffled(zeros) : Baffled(zeros);
        if (baffle is BaffleCondition.BaffledBothSides)
            air *= 2;

        // Scaled by the stiffness the problem is an ordinary symmetric one, its greatest eigenvalue 1/lambda_min.
        var inertia = Matrix<double>.Build.Dense(
            modes,
            modes,
            (m, n) => ((m == n ? norms[n] : 0) + massRatio * air[m, n]) / (zeros[m] * zeros[n] * Math.Sqrt(norms[m] * norms[n]))
        );
        var greatest = inertia.Evd(Symmetricity.Symmetric).EigenValues.Max(e => e.Real);
        return 1 / (Math.Sqrt(greatest) * PhysicalConstants.FirstZeroOfJ0);
    }

    private static Matrix<double> Baffled(double[] zeros)
    {
        var nodes = AirLoadIntegrals.Nodes;
        var transforms = zeros.Select(AirLoadIntegrals.TransformOfMode).ToArray();
        return Symmetric(
            zeros.Length,
            (m, n) => Enumerable.Range(0, nodes.Count).Sum(i => nodes[i].Weight * transforms[m][i] * transforms[n][i])
        );
    }

    private static Matrix<double> Unbaffled(double[] zeros)
    {
        // Spherical Bessel functions of an order above their argument die away: 2n + 1 runs well past the greatest zero.
        var terms = (int)(zeros[^1] / 2) + 24;
        var projections = zeros
            .Select(z => Enumerable.Range(0, terms).Select(n => AirLoadIntegrals.ProjectionOfMode(z, n)).ToArray())
            .ToArray();
        return Symmetric(
            zeros.Length,
            (m, n) => 8 / (2 * Math.PI) * Enumerable.Range(0, terms).Sum(i => (4 * i + 3) * projections[m][i] * projections[n][i])
        );
    }

    private static Matrix<double> Symmetric(int size, Func<int, int, double> entry)
    {
        var matrix = Matrix<double>.Build.Dense(size, size);
        for (var m = 0; m < size; m++)
        for (var n = 0; n <= m; n++)
            matrix[m, n] = matrix[n, m] = entry(m, n);
        return matrix;
    }
}
