namespace Traceability.Domain.Quality.Distributions;

/// <summary>
/// Student's t with nu degrees of freedom (whole or not): P(|T| > t) = I_{nu/(nu+t^2)}(nu/2, 1/2).
/// </summary>
/// <remarks>
/// Valid for nu above 0 and every t. Source: Abramowitz and Stegun 26.7. Checked by <c>DistributionsAgainstTables</c> and F17-001.
/// </remarks>
public static class StudentDistribution
{
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

        // Either variable is close to 1 in one half of the range, where 1 - x would lose digits: take the other there.
        double nu = degreesOfFreedom;
        double x = BetaDistribution.Quantile(nu / 2, 0.5, 2 * p);
        if (x <= 0.5)
        {
            return Math.Sqrt(nu * (1 - x) / x);
        }

        double y = BetaDistribution.Quantile(0.5, nu / 2, 1 - 2 * p);
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
