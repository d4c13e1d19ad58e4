using MathNet.Numerics;

namespace Traceability.Domain.Quality.Distributions;

/// <summary>
/// Student's t with nu degrees of freedom (whole or not): P(|T| > t) = I_{nu/(nu+t^2)}(nu/2, 1/2).
/// </summary>
/// <remarks>
/// Valid for nu above 0 and every t. Source: Abramowitz and Stegun 26.7. Checked by <c>DistributionsAgainstTables</c> and F17-001.
/// </remarks>
public static class StudentDistribution
{
    /// <summary>ln x below which the second term of the series is lost in rounding.</summary>
    private const double FirstTermIsAll = -80;

    /// <summary>P(|T| > |t|), the two-sided p-value, without loss of digits far out.</summary>
    /// <param name="t">The statistic.</param>
    /// <param name="degreesOfFreedom">nu, above 0.</param>
    public static double OutsideBothSides(double t, double degreesOfFreedom) =>
        BetaDistribution.Below(degreesOfFreedom / 2, 0.5, degreesOfFreedom / (degreesOfFreedom + t * t));

    /// <summary>P(T > t).</summary>
    /// <param name="t">The statistic.</param>
    /// <param name="degreesOfFreedom">nu, above 0.</param>
    public static double Above(double t, double degreesOfFreedom)
    {
        double tail = OutsideBothSides(t, degreesOfFreedom) / 2;
        return t >= 0 ? tail : 1 - tail;
    }

    /// <summary>The t that is exceeded with probability <paramref name="p"/> (an upper quantile).</summary>
    /// <param name="p">A probability between 0 and 1, both excluded.</param>
    /// <param name="degreesOfFreedom">nu, above 0.</param>
    public static double UpperQuantile(double p, double degreesOfFreedom)
    {
        if (p > 0.5)
        {
            return -UpperQuantile(1 - p, degreesOfFreedom);
        }

        // Far out I_x(a, 1/2) is its first term x^a / (a B(a, 1/2)); x itself may be too small for a double.
        double nu = degreesOfFreedom,
            a = nu / 2;
        double logX =
            (
                Math.Log(2 * p)
                + Math.Log(a)
                + SpecialFunctions.GammaLn(a)
                + SpecialFunctions.GammaLn(0.5)
                - SpecialFunctions.GammaLn(a + 0.5)
            ) / a;
        if (logX < FirstTermIsAll)
        {
            return Math.Sqrt(nu) * Math.Exp(-logX / 2);
        }

        // 1 - x loses digits where x is close to 1, and so does 1 - 2 p where p is small: the worse of the two is avoided.
        double x = BetaDistribution.Quantile(a, 0.5, 2 * p);
        if (1 - x >= 2 * p)
        {
            return Math.Sqrt(nu * (1 - x) / x);
        }

        double y = BetaDistribution.Quantile(0.5, a, 1 - 2 * p);
        return Math.Sqrt(nu * y / (1 - y));
    }

    /// <summary>The t for a two-sided interval at a confidence level.</summary>
    /// <param name="confidence">The confidence level, between 0 and 1.</param>
    /// <param name="degreesOfFreedom">nu, above 0.</param>
    public static double TwoSidedQuantile(double confidence, double degreesOfFreedom)
    {
        Interval.RequireConfidence(confidence);
        return UpperQuantile((1 - confidence) / 2, degreesOfFreedom);
    }
}
