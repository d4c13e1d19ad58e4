using MathNet.Numerics;
using MathNet.Numerics.Integration;

namespace Traceability.Domain.Quality.Distributions;

/// <summary>
/// Noncentral t with nu degrees of freedom and noncentrality delta: T = (Z + delta) / U, Z standard normal, nu U^2 chi-square with nu
/// degrees of freedom, so P(T &lt;= t) = Integral Phi(t u - delta) g(u) du with g(u) = 2 (nu/2)^(nu/2) / Gamma(nu/2) u^(nu-1) exp(-nu u^2 /
/// 2).
/// </summary>
/// <remarks>
/// The integral is taken by Gauss-Legendre panels over the range where g is above 1e-20 of its top, with panels of their own where Phi goes
/// from 0 to 1, about u = delta/t and 1/|t| wide: far out, which with 1 or 2 degrees of freedom is where quantiles lie, that is narrower
/// than any other panel. Valid for nu of 1 or more (whole) and any finite t and delta. Source: Johnson, Kotz and Balakrishnan, Continuous
/// Univariate Distributions 2, chapter 31 (from memory). Checked by F17-004, F17-005 (tolerance factors) and
/// <c>DistributionsAgainstTables</c>.
/// </remarks>
public static class NoncentralStudentDistribution
{
    private const int Panels = 24;
    private const int PanelsOfTheStep = 8;
    private const int PointsPerPanel = 32;

    /// <summary>Phi is 0 or 1 to rounding so many standard deviations away.</summary>
    private const double Step = 9;

    /// <summary>P(T &lt;= t).</summary>
    /// <param name="t">Where to cut.</param>
    /// <param name="degreesOfFreedom">nu, 1 or more.</param>
    /// <param name="noncentrality">delta.</param>
    /// <exception cref="ArgumentOutOfRangeException">nu is below 1.</exception>
    public static double Below(double t, double degreesOfFreedom, double noncentrality) => Share(t, degreesOfFreedom, noncentrality, 1);

    /// <summary>P(T > t), without loss of digits far out.</summary>
    /// <param name="t">Where to cut.</param>
    /// <param name="degreesOfFreedom">nu, 1 or more.</param>
    /// <param name="noncentrality">delta.</param>
    /// <exception cref="ArgumentOutOfRangeException">nu is below 1.</exception>
    public static double Above(double t, double degreesOfFreedom, double noncentrality) => Share(t, degreesOfFreedom, noncentrality, -1);

    private static double Share(double t, double nu, double delta, int side)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(nu, 1, "degreesOfFreedom");
        double logScale = Math.Log(2) + nu / 2 * Math.Log(nu / 2) - SpecialFunctions.GammaLn(nu / 2);
        double reach = 10 / Math.Sqrt(2 * nu);
        double from = Math.Max(0, 1 - reach),
            to = 1 + reach;
        double centre = Math.Clamp(delta / t, from, to),
            first = Math.Clamp((delta - Step) / t, from, to),
            last = Math.Clamp((delta + Step) / t, from, to);
        (first, last) = double.IsFinite(delta / t) ? (Math.Min(first, last), Math.Max(first, last)) : (from, from);
        double sum =
            Over(from, first, Panels) + Over(first, centre, PanelsOfTheStep) + Over(centre, last, PanelsOfTheStep) + Over(last, to, Panels);
        return Math.Clamp(sum, 0, 1);

        double Over(double left, double right, int panels)
        {
            double width = (right - left) / panels,
                part = 0;
            for (int panel = 0; width > 0 && panel < panels; panel++)
            {
                part += GaussLegendreRule.Integrate(Integrand, left + panel * width, left + (panel + 1) * width, PointsPerPanel);
            }

            return part;
        }

        double Integrand(double u) =>
            u <= 0 ? 0 : NormalDistribution.Below(side * (t * u - delta)) * Math.Exp(logScale + (nu - 1) * Math.Log(u) - nu * u * u / 2);
    }

    /// <summary>The t below which the share <paramref name="p"/> lies.</summary>
    /// <param name="p">A probability between 0 and 1, both excluded.</param>
    /// <param name="degreesOfFreedom">nu, 1 or more.</param>
    /// <param name="noncentrality">delta.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> does not lie between 0 and 1, or nu is below 1.</exception>
    public static double Quantile(double p, double degreesOfFreedom, double noncentrality)
    {
        if (p is not (> 0 and < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(p), p, "A quantile needs a probability between 0 and 1, both excluded.");
        }

        double step = 1 + Math.Abs(noncentrality),
            from = noncentrality - step,
            to = noncentrality + step;
        while (Below(from, degreesOfFreedom, noncentrality) > p)
        {
            from -= step *= 2;
        }

        while (Above(to, degreesOfFreedom, noncentrality) > 1 - p)
        {
            to += step *= 2;
        }

        return MonotoneRoot.Find(
            t => p <= 0.5 ? Below(t, degreesOfFreedom, noncentrality) - p : 1 - p - Above(t, degreesOfFreedom, noncentrality),
            from,
            to
        );
    }
}
