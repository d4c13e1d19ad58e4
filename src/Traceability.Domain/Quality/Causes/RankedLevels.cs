using Traceability.Domain.Quality.Comparisons;

namespace Traceability.Domain.Quality.Causes;

/// <summary>The values of one factor's levels, ranked and summed in one walk over the values in rising order.</summary>
internal sealed class RankedLevels
{
    private readonly FactorColumn factor;
    private readonly int[] sizes;
    private readonly double[] rankSums;
    private readonly double[] sums;
    private readonly double[] squares;
    private readonly double origin;
    private readonly int tooSmall;
    private readonly int total;
    private readonly double tieTerm;

    public RankedLevels(FactorColumn factor, double[] sorted, int[] rows, int leastValues)
    {
        this.factor = factor;
        int count = factor.Levels.Count;
        (sizes, rankSums, sums, squares) = (new int[count], new double[count], new double[count], new double[count]);
        ReadOnlySpan<int> codes = factor.Codes;
        foreach (int row in rows)
        {
            if (codes[row] >= 0)
            {
                sizes[codes[row]]++;
            }
        }

        for (int level = 0; level < count; level++)
        {
            tooSmall += sizes[level] is > 0 && sizes[level] < leastValues ? 1 : 0;
            sizes[level] = sizes[level] < leastValues ? 0 : sizes[level];
            total += sizes[level];
        }

        // Sums are taken from the middle value, which keeps their digits when values share a large offset.
        origin = sorted[sorted.Length / 2];
        var tied = new int[count];
        double before = 0;
        for (int start = 0, end; start < sorted.Length; start = end)
        {
            int run = 0;
            for (end = start; end < sorted.Length && sorted[end] == sorted[start]; end++)
            {
                int code = codes[rows[end]];
                if (code >= 0 && sizes[code] > 0)
                {
                    run++;
                    tied[code]++;
                }
            }

            double rank = before + (run + 1) / 2.0, off = sorted[start] - origin;
            for (int i = start; i < end; i++)
            {
                int code = codes[rows[i]];
                if (code >= 0 && tied[code] > 0)
                {
                    rankSums[code] += tied[code] * rank;
                    sums[code] += tied[code] * off;
                    squares[code] += tied[code] * off * off;
                    tied[code] = 0;
                }
            }

            before += run;
            tieTerm += (double)run * ((double)run * run - 1);
        }
    }

    public Answer<ValueAssociation> Associate()
    {
        Answer<ChiSquareResult> kruskalWallis = KruskalWallis.FromRankSums(rankSums, sizes, tieTerm);
        if (kruskalWallis.Missing is { } missing)
        {
            return missing;
        }

        int[] used = [.. Enumerable.Range(0, sizes.Length).Where(level => sizes[level] > 0)];
        GroupSummary[] groups = [.. used.Select(Summary)];
        return new ValueAssociation(
            factor.Name, total, used.Length, tooSmall, kruskalWallis.Value, kruskalWallis.Value.P,
            EffectSize.EpsilonSquared(kruskalWallis.Value.Statistic, total), WelchAnova.Test(groups), OmegaSquared(groups), Furthest(used));
    }

    private GroupSummary Summary(int level)
    {
        double n = sizes[level], mean = sums[level] / n;
        double variance = n > 1 ? Math.Max(0, (squares[level] - n * mean * mean) / (n - 1)) : 0;
        return new GroupSummary(sizes[level], origin + mean, variance);
    }

    private double OmegaSquared(GroupSummary[] groups)
    {
        double mean = sums.Where((_, level) => sizes[level] > 0).Sum() / total + origin;
        double between = groups.Sum(g => g.Size * (g.Mean - mean) * (g.Mean - mean)), within = groups.Sum(g => (g.Size - 1) * g.Variance);
        double error = within / (total - groups.Length);
        return Math.Max(0, (between - (groups.Length - 1) * error) / (between + within + error));
    }

    /// <summary>The level furthest out, by its rank sum in standard deviations, so that a large level is not outdone by a few stray values.</summary>
    private LevelShift Furthest(int[] used)
    {
        int level = used.MaxBy(l => Math.Abs(rankSums[l] - sizes[l] * (total + 1.0) / 2) / Math.Sqrt((double)sizes[l] * (total - sizes[l])));
        double others = (used.Sum(l => sums[l]) - sums[level]) / (total - sizes[level]) + origin;
        return new LevelShift(
            factor.Levels[level], Summary(level), others, EffectSize.CliffsDelta(rankSums[level], sizes[level], total - sizes[level]));
    }
}
