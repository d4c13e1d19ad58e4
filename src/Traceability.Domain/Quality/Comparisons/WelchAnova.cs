using Traceability.Domain.Quality.Distributions;
using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.Comparisons;

/// <summary>
/// Welch's analysis of variance for groups that need not spread alike.
/// </summary>
/// <remarks>
/// w_i = n_i/s_i^2, W = Sum w_i, m = Sum w_i m_i / W, h = Sum (1 - w_i/W)^2/(n_i - 1);
/// F = [Sum w_i (m_i - m)^2/(k - 1)] / [1 + 2 (k - 2) h/(k^2 - 1)], nu1 = k - 1, nu2 = (k^2 - 1)/(3 h).
/// Groups of fewer than 2 values, or without spread, cannot be weighed and are left out; with fewer than 2 left: "not enough data".
/// Source: B. L. Welch, Biometrika 38 (1951); as R's oneway.test. Checked by <c>GroupComparisonsAgainstPublishedExamples</c>; for two
/// groups it is the square of <see cref="WelchTTest"/>.
/// </remarks>
public static class WelchAnova
{
    /// <summary>Compares the means of several groups.</summary>
    /// <param name="groups">The values of each group, in the same unit.</param>
    public static Computed<VarianceRatioResult> Test(IReadOnlyList<IReadOnlyList<double>> groups) =>
        Test([.. GroupedValues.WithAtLeast(2, groups).Select(g => new GroupSummary(g.Count, Sample.Mean(g), Sample.Variance(g)))]);

    /// <summary>Compares the means of several groups known by size, mean and variance.</summary>
    /// <param name="groups">One summary per group.</param>
    public static Computed<VarianceRatioResult> Test(IReadOnlyCollection<GroupSummary> groups)
    {
        GroupSummary[] used = [.. groups.Where(g => g.Size >= 2 && g.Variance > 0)];
        int k = used.Length;
        if (k < 2)
        {
            return new NotEnoughData("groups of two or more differing values", 2, k);
        }

        double weight = used.Sum(g => g.Size / g.Variance);
        double mean = used.Sum(g => g.Size / g.Variance * g.Mean) / weight,
            between = 0,
            h = 0;
        foreach (GroupSummary g in used)
        {
            double w = g.Size / g.Variance,
                off = g.Mean - mean,
                share = 1 - w / weight;
            between += w * off * off;
            h += share * share / (g.Size - 1);
        }

        double kk = (double)k * k - 1;
        double f = between / (k - 1) / (1 + 2 * (k - 2) * h / kk),
            nu2 = kk / (3 * h);
        return new VarianceRatioResult(f, k - 1, nu2, FDistribution.Above(f, k - 1, nu2));
    }
}
