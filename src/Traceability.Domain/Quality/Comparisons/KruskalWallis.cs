using Traceability.Domain.Quality.Distributions;
using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.Comparisons;

/// <summary>
/// The Kruskal-Wallis test: do values of some groups tend to be larger, whatever their distribution?
/// H = [12/(N (N + 1)) Sum R_i^2/n_i - 3 (N + 1)] / [1 - Sum (t^3 - t)/(N^3 - N)], R_i the rank sums, chi-square with k - 1.
/// </summary>
/// <remarks>
/// Empty groups are left out. Needs 2 groups and 2 different values; otherwise "not enough data". The chi-square p is an approximation that
/// is fair from about 5 values per group. Source: Kruskal and Wallis, JASA 47 (1952); as R's kruskal.test. Checked by F17-002.
/// </remarks>
public static class KruskalWallis
{
    /// <summary>Compares several groups of values.</summary>
    /// <param name="groups">The values of each group, in the same unit.</param>
    public static Computed<ChiSquareResult> Test(IReadOnlyList<IReadOnlyList<double>> groups)
    {
        var used = GroupedValues.WithAtLeast(1, groups);
        Midranks ranks = Midranks.Of([.. used.SelectMany(g => g)]);
        var sums = new double[used.Count];
        int next = 0;
        for (int i = 0; i < used.Count; i++)
        {
            for (int j = 0; j < used[i].Count; j++)
            {
                sums[i] += ranks.Ranks[next++];
            }
        }

        return FromRankSums([.. sums], [.. used.Select(g => g.Count)], ranks.TieTerm);
    }

    /// <summary>The test from rank sums, for callers that rank once and group many times.</summary>
    /// <param name="rankSums">R_i, one per group.</param>
    /// <param name="sizes">n_i, one per group; empty groups are left out.</param>
    /// <param name="tieTerm">Sum (t^3 - t) over the runs of equal values.</param>
    public static Computed<ChiSquareResult> FromRankSums(IReadOnlyList<double> rankSums, IReadOnlyList<int> sizes, double tieTerm)
    {
        double n = sizes.Sum(),
            middle = (n + 1) / 2,
            spread = 0;
        int groups = 0;
        for (int i = 0; i < sizes.Count; i++)
        {
            if (sizes[i] > 0)
            {
                double off = rankSums[i] / sizes[i] - middle;
                spread += sizes[i] * off * off;
                groups++;
            }
        }

        if (groups < 2)
        {
            return new NotEnoughData("groups with values", 2, groups);
        }

        double untied = n * (n * n - 1);
        if (tieTerm >= untied)
        {
            return new NotEnoughData("different values", 2, 1);
        }

        double h = 12 * spread / (n * (n + 1)) / (1 - tieTerm / untied);
        return new ChiSquareResult(h, groups - 1, ChiSquareDistribution.Above(h, groups - 1));
    }
}
