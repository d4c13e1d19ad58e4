using MathNet.Numerics;

namespace Traceability.Domain.Quality.Distributions;

/// <summary>
/// The standard normal distribution: Phi(z) = erfc(-z / sqrt 2) / 2.
/// </summary>
/// <remarks>
/// Valid for every finite z; both tails keep their relative accuracy down to 1e-300, below that they are 0.
/// Source: any table of the normal distribution. Checked by <c>DistributionsAgainstTables</c>.
/// </remarks>
public static class NormalDistribution
{
    /// <summary>phi(z), the density.</summary>
    /// <param name="z">Standard deviations from the mean.</param>
    public static double Density(double z) => Math.Exp(-0.5 * z * z) / Math.Sqrt(2 * Math.PI);

    /// <summary>Phi(z) = P(Z &lt;= z).</summary>
    /// <param name="z">Standard deviations from the mean.</param>
    public static double Below(double z) => 0.5 * SpecialFunctions.Erfc(-z / Math.Sqrt(2));

    /// <summary>
    /// ln Phi(z), which stays finite where Phi(z) itself is 0: below -30 by Phi(z) ~ phi(z)/|z| (1 - 1/z^2 + 3/z^4 - 15/z^6).
    /// </summary>
    /// <param name="z">Standard deviations from the mean.</param>
    public static double LogBelow(double z)
    {
        if (z >= -30)
        {
            return z > 0 ? Math.Log(1 - Above(z)) : Math.Log(Below(z));
        }

        double r = 1 / (z * z);
        return -0.5 * z * z - Math.Log(-z * Math.Sqrt(2 * Math.PI)) + Math.Log(1 - r * (1 - 3 * r * (1 - 5 * r)));
    }

    /// <summary>1 - Phi(z) = P(Z > z), without loss of digits far out.</summary>
    /// <param name="z">Standard deviations from the mean.</param>
    public static double Above(double z) => Below(-z);

    /// <summary>P(|Z| > |z|), the two-sided p-value.</summary>
    /// <param name="z">Standard deviations from the mean.</param>
    public static double OutsideBothSides(double z) => 2 * Below(-Math.Abs(z));

    /// <summary>The z below which the share <paramref name="p"/> lies; minus or plus infinity at 0 and 1.</summary>
    /// <param name="p">A probability from 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> does not lie from 0 to 1.</exception>
    public static double Quantile(double p)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(p);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(p, 1);
        return p > 0.5 ? -Quantile(1 - p) : -Math.Sqrt(2) * SpecialFunctions.ErfcInv(2 * p);
    }

    /// <summary>The z for a two-sided interval at a confidence level: 1.959964 at 0.95.</summary>
    /// <param name="confidence">The confidence level, between 0 and 1.</param>
    public static double TwoSidedQuantile(double confidence)
    {
        Interval.RequireConfidence(confidence);
        return -Quantile((1 - confidence) / 2);
    }
}
