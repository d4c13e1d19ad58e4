using MathNet.Numerics;
using MathNet.Numerics.Integration;

namespace Traceability.Domain.Quality.Distributions;

/// <summary>
/// Noncentral t with nu degrees of freedom and noncentrality delta: T = (Z + delta) / U, Z standard normal, nu U^2 chi-square with nu
/// degrees of freedom, so P(T &lt;= t) = Integral Phi(t u - delta) g(u) du with g(u) = 2 (nu/2)^(nu/2) / Gamma(nu/2) u^(nu-1) exp(-nu u^2 / 2).
/// </summary>
/// <remarks>
/// The integral is taken by Gauss-Legendre panels over the range where g is above 1e-20 of its top. Valid for nu of 1 or more and any
/// finite t and delta. Source: Johnson, Kotz and Balakrishnan, Continuous Univariate Distributions 2, chapter 31 (from memory). Checked by
/// F17-004, F17-005 (tolerance factors) and <c>DistributionsAgainstTables</c>.
/// </remarks>
public static class NoncentralStudentDistribution
{
    private const int Panels = 24;
    private const int PointsPerPanel = 32;

    /// <summary>P(T &lt;= t).</summary>
    /// <param name="t">Where to cut.</param>
    /// <param name="degreesOfFreedom">nu, 1 or more.</param>
    /// <param name="noncentrality">delta.</param>
    public static double Below(double t, double degreesOfFreedom, double noncentrality)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(degreesOfFreedom, 1);
        double nu = degreesOfFreedom;
        double logScale = Math.Log(2) + nu / 2 * Math.Log(nu / 2) - SpecialFunctions.GammaLn(nu / 2);
        double reach = 10 / Math.Sqrt(2 * nu);
        double from = Math.Max(0, 1 - reach), to = 1 + reach;
        double width = (to - from) / Panels, sum = 0;
        for (int panel = 0; panel < Panels; panel++)
        {
            double left = from + panel * width;
            sum += GaussLegendreRule.Integrate(Integrand, left, left + width, PointsPerPanel);
        }

        return Math.Clamp(sum, 0, 1);

        double Integrand(double u) => u <= 0
            ? 0
            : NormalDistribution.Below(t * u - noncentrality) * Math.Exp(logScale + (nu - 1) * Math.Log(u) - nu * u * u / 2);
    }

    /// <summary>The t below which the share <paramref name="p"/> lies.</summary>
    /// <param name="p">A probability between 0 and 1, both excluded.</param>
    /// <param name="degreesOfFreedom">nu, 1 or more.</param>
    /// <param name="noncentrality">delta.</param>
    public static double Quantile(double p, double degreesOfFreedom, double noncentrality)
    {
        if (p is not (> 0 and < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(p), p, "A quantile needs a probability between 0 and 1, both excluded.");
        }

        double step = 1 + Math.Abs(noncentrality), from = noncentrality - step, to = noncentrality + step;
        while (Below(from, degreesOfFreedom, noncentrality) > p)
        {
            from -= step *= 2;
        }

        while (Below(to, degreesOfFreedom, noncentrality) < p)
        {
            to += step *= 2;
        }

        return MonotoneRoot.Find(t => Below(t, degreesOfFreedom, noncentrality) - p, from, to);
    }
}
