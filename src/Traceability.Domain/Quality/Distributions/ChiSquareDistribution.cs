using MathNet.Numerics;

namespace Traceability.Domain.Quality.Distributions;

/// <summary>
/// Chi-square with nu degrees of freedom: P(X > x) = Q(nu/2, x/2), the regularised upper incomplete gamma function.
/// </summary>
/// <remarks>
/// Valid for nu above 0; at or below x = 0 everything lies above. Below x = 2 the share below is summed by the series of the lower function
/// (Abramowitz and Stegun 6.5.29), because the library's is 0 for small x. Source: Abramowitz and Stegun 26.4. Checked by
/// <c>DistributionsAgainstTables</c>, F6-005, F9 and F15.
/// </remarks>
public static class ChiSquareDistribution
{
    /// <summary>P(X > x), the p-value of a chi-square statistic.</summary>
    /// <param name="x">The statistic.</param>
    /// <param name="degreesOfFreedom">nu, above 0.</param>
    public static double Above(double x, double degreesOfFreedom) =>
        x switch
        {
            <= 0 => 1,
            double.PositiveInfinity => 0,
            _ => SpecialFunctions.GammaUpperRegularized(degreesOfFreedom / 2, x / 2),
        };

    /// <summary>P(X &lt;= x).</summary>
    /// <param name="x">Where to cut.</param>
    /// <param name="degreesOfFreedom">nu, above 0.</param>
    public static double Below(double x, double degreesOfFreedom) =>
        x switch
        {
            <= 0 => 0,
            double.PositiveInfinity => 1,
            < 2 => Series(degreesOfFreedom / 2, x / 2),
            _ => SpecialFunctions.GammaLowerRegularized(degreesOfFreedom / 2, x / 2),
        };

    /// <summary>The x below which the share <paramref name="p"/> lies.</summary>
    /// <param name="p">A probability from 0 (included) to 1 (excluded).</param>
    /// <param name="degreesOfFreedom">nu, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is below 0, or 1 or more.</exception>
    public static double Quantile(double p, double degreesOfFreedom)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(p);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(p, 1);
        return p == 0
            ? 0
            : MonotoneRoot.FindAbove(
                p <= 0.5 ? x => Below(x, degreesOfFreedom) - p : x => 1 - p - Above(x, degreesOfFreedom),
                0,
                degreesOfFreedom + 1
            );
    }

    /// <summary>P(a, x) = x^a e^-x / Gamma(a + 1) Sum x^n / ((a + 1) ... (a + n)), for x below 1.</summary>
    private static double Series(double a, double x)
    {
        double sum = 1,
            term = 1;
        for (int n = 1; term > 1e-17 * sum; n++)
        {
            sum += term *= x / (a + n);
        }

        return Math.Min(1, sum * Math.Exp(a * Math.Log(x) - x - SpecialFunctions.GammaLn(a + 1)));
    }
}
