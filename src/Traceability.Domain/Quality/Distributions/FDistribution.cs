namespace Traceability.Domain.Quality.Distributions;

/// <summary>
/// Fisher's F with nu1 and nu2 degrees of freedom (whole or not): P(F > f) = I_{nu2/(nu2 + nu1 f)}(nu2/2, nu1/2).
/// </summary>
/// <remarks>
/// Valid for nu1 and nu2 above 0; at or below f = 0 everything lies above. Source: Abramowitz and Stegun 26.6. Checked by
/// <c>DistributionsAgainstTables</c> and F17-003.
/// </remarks>
public static class FDistribution
{
    /// <summary>P(F > f), the p-value of a variance ratio, without loss of digits far out.</summary>
    /// <param name="f">The variance ratio.</param>
    /// <param name="numeratorDf">nu1, above 0.</param>
    /// <param name="denominatorDf">nu2, above 0.</param>
    public static double Above(double f, double numeratorDf, double denominatorDf) =>
        f switch
        {
            <= 0 => 1,
            double.PositiveInfinity => 0,
            _ => BetaDistribution.Below(denominatorDf / 2, numeratorDf / 2, denominatorDf / (denominatorDf + numeratorDf * f)),
        };

    /// <summary>The f that is exceeded with probability <paramref name="p"/> (an upper quantile).</summary>
    /// <param name="p">A probability between 0 and 1, both excluded.</param>
    /// <param name="numeratorDf">nu1, above 0.</param>
    /// <param name="denominatorDf">nu2, above 0.</param>
    public static double UpperQuantile(double p, double numeratorDf, double denominatorDf)
    {
        double x = BetaDistribution.Quantile(denominatorDf / 2, numeratorDf / 2, p);
        return denominatorDf * (1 - x) / (numeratorDf * x);
    }
}
