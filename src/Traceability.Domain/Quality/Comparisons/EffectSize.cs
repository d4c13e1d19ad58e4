using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.Comparisons;

/// <summary>
/// How large a difference is, beside whether it is there: with enough parts every difference is "significant".
/// </summary>
/// <remarks>
/// Checked by <c>GroupComparisonsAgainstPublishedExamples</c>. Words for sizes ("small", "large") are left to the reader.
/// </remarks>
public static class EffectSize
{
    /// <summary>
    /// Cohen's d = (m1 - m2) / s_p with the pooled s_p^2 = ((n1 - 1) s1^2 + (n2 - 1) s2^2) / (n1 + n2 - 2). Needs 2 values on each side and
    /// some spread. Source: J. Cohen, Statistical Power Analysis for the Behavioral Sciences (1988).
    /// </summary>
    /// <param name="first">The first group.</param>
    /// <param name="second">The second group.</param>
    public static Computed<double> CohensD(IReadOnlyList<double> first, IReadOnlyList<double> second)
    {
        int smaller = Math.Min(first.Count, second.Count);
        if (smaller < 2)
        {
            return new NotEnoughData("values in each of the two groups", 2, smaller);
        }

        double pooled = (Sample.SumOfSquares(first) + Sample.SumOfSquares(second)) / (first.Count + second.Count - 2);
        return pooled == 0
            ? new NotEnoughData("different values inside a group", 2, 1)
            : (Sample.Mean(first) - Sample.Mean(second)) / Math.Sqrt(pooled);
    }

    /// <summary>
    /// Cliff's delta: P(first > second) - P(first &lt; second) over all pairs, from -1 to 1, by ranks:
    /// delta = 2 (R1 - n1 (n1 + 1)/2) / (n1 n2) - 1. Needs 1 value on each side. Source: N. Cliff, Psychological Bulletin 114 (1993).
    /// </summary>
    /// <param name="first">The first group.</param>
    /// <param name="second">The second group.</param>
    public static Computed<double> CliffsDelta(IReadOnlyList<double> first, IReadOnlyList<double> second)
    {
        if (first.Count == 0 || second.Count == 0)
        {
            return new NotEnoughData("values in each of the two groups", 1, 0);
        }

        double rankSum = Midranks.Of([.. first, .. second]).Ranks.Take(first.Count).Sum();
        return CliffsDelta(rankSum, first.Count, second.Count);
    }

    /// <summary>Cliff's delta from a rank sum, for callers that rank once.</summary>
    /// <param name="rankSum">The sum of the midranks of the first group among both together.</param>
    /// <param name="first">The size of the first group, 1 or more.</param>
    /// <param name="second">The size of the second group, 1 or more.</param>
    public static double CliffsDelta(double rankSum, int first, int second) =>
        2 * (rankSum - first * (first + 1.0) / 2) / ((double)first * second) - 1;

    /// <summary>
    /// Epsilon squared of a Kruskal-Wallis test: H / (N - 1), from 0 to 1. Source: M. Tomczak and E. Tomczak, Trends in Sport Sciences 1
    /// (2014).
    /// </summary>
    /// <param name="h">The Kruskal-Wallis statistic.</param>
    /// <param name="values">N, 2 or more.</param>
    public static double EpsilonSquared(double h, int values) => Math.Clamp(h / (values - 1), 0, 1);

    /// <summary>
    /// Phi of a two-by-two table: (a d - b c) / sqrt(product of the four margins), from -1 to 1; 0 where a margin is empty.
    /// Source: G. U. Yule (1912).
    /// </summary>
    /// <param name="a">First row, first column.</param>
    /// <param name="b">First row, second column.</param>
    /// <param name="c">Second row, first column.</param>
    /// <param name="d">Second row, second column.</param>
    public static double Phi(double a, double b, double c, double d)
    {
        double margins = Math.Sqrt(a + b) * Math.Sqrt(c + d) * Math.Sqrt(a + c) * Math.Sqrt(b + d);
        return margins == 0 ? 0 : Math.Clamp((a * d - b * c) / margins, -1, 1);
    }
}
