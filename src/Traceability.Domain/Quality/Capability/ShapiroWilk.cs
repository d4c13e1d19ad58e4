using Traceability.Domain.Quality.Distributions;
using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.Capability;

/// <summary>The answer of <see cref="ShapiroWilk"/>.</summary>
/// <param name="W">The statistic, at most 1; 1 is perfectly normal.</param>
/// <param name="P">The probability of a W as small from a normal process.</param>
public sealed record ShapiroWilkResult(double W, double P);

/// <summary>
/// The Shapiro-Wilk test that values come from one normal distribution: W = (Sum a_i x_(i))^2 / Sum (x - mean)^2, a second opinion to
/// <see cref="AndersonDarling"/> that works from 3 values on.
/// </summary>
/// <remarks>
/// Weights from normal scores m_i = z((i - 3/8)/(n + 1/4)) with Royston's polynomial corrections of the two outermost; p from a normal
/// transformation of 1 - W. Valid for 3 to 5000 values that differ; fewer: "not enough data", more throw.
/// Source: P. Royston, Algorithm AS R94, Applied Statistics 44 (1995), coefficients from memory. Checked by F11-011 and
/// <c>ReturnsAgainstPublishedExamples</c>.
/// </remarks>
public static class ShapiroWilk
{
    private static readonly double[] OutermostWeight = [0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056];
    private static readonly double[] NextWeight = [0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633];
    private static readonly double[] FewMean = [0.544, -0.39978, 0.025054, -6.714e-4];
    private static readonly double[] FewLogDeviation = [1.3822, -0.77857, 0.062767, -0.0020322];
    private static readonly double[] ManyMean = [-1.5861, -0.31082, -0.083751, 0.0038915];
    private static readonly double[] ManyLogDeviation = [-0.4803, -0.082676, 0.0030302];

    /// <summary>The test.</summary>
    /// <param name="values">The values in any order.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are more than 5000 values.</exception>
    public static Computed<ShapiroWilkResult> Test(IReadOnlyList<double> values)
    {
        int n = values.Count;
        ArgumentOutOfRangeException.ThrowIfGreaterThan(n, 5000);
        if (n < 3)
        {
            return new NotEnoughData("values", 3, n);
        }

        double squares = Sample.SumOfSquares(values);
        if (squares == 0)
        {
            return new NotEnoughData("different values", 2, 1);
        }

        double[] sorted = [.. values.Order()],
            weights = Weights(n);
        double sum = 0;
        for (int i = 0; i < weights.Length; i++)
        {
            sum += weights[i] * (sorted[n - 1 - i] - sorted[i]);
        }

        double w = Math.Min(1, sum * sum / squares);
        return new ShapiroWilkResult(w, P(w, n));
    }

    /// <summary>The weights of the upper half, outermost first; the lower half has them with the other sign.</summary>
    private static double[] Weights(int n)
    {
        if (n == 3)
        {
            return [Math.Sqrt(0.5)];
        }

        double[] m = [.. Enumerable.Range(1, n / 2).Select(i => -NormalDistribution.Quantile((i - 0.375) / (n + 0.25)))];
        double total = 2 * m.Sum(v => v * v),
            root = Math.Sqrt(total),
            small = 1 / Math.Sqrt(n);
        double first = m[0] / root + Polynomial(OutermostWeight, small);
        double[] corrected = n > 5 ? [first, m[1] / root + Polynomial(NextWeight, small)] : [first];
        double left = total - 2 * m.Take(corrected.Length).Sum(v => v * v),
            share = 1 - 2 * corrected.Sum(v => v * v);
        double scale = Math.Sqrt(left / share);
        return [.. corrected, .. m.Skip(corrected.Length).Select(v => v / scale)];
    }

    private static double P(double w, int n)
    {
        if (n == 3)
        {
            return Math.Clamp(6 / Math.PI * (Math.Asin(Math.Sqrt(w)) - Math.PI / 3), 0, 1);
        }

        double y = Math.Log(1 - w),
            logN = Math.Log(n);
        if (n > 11)
        {
            return Above(y, Polynomial(ManyMean, logN), Polynomial(ManyLogDeviation, logN));
        }

        double most = -2.273 + 0.459 * n;
        return y >= most ? 0 : Above(-Math.Log(most - y), Polynomial(FewMean, n), Polynomial(FewLogDeviation, n));
    }

    private static double Above(double y, double mean, double logDeviation) =>
        NormalDistribution.Above((y - mean) / Math.Exp(logDeviation));

    private static double Polynomial(double[] coefficients, double x) => coefficients.Reverse().Aggregate(0.0, (sum, c) => sum * x + c);
}
