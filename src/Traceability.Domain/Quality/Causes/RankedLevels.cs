using Traceability.Domain.Quality.Comparisons;

namespace Traceability.Domain.Quality.Causes;

/// <summary>
/// The ranks and sums of one factor's levels, gathered in walks over the rows in their own order, which is what keeps it quick.
/// </summary>
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

    public RankedLevels(FactorColumn factor, RankedValues values, int leastValues)
    {
        this.factor = factor;
        int count = factor.Levels.Count;
        (sizes, rankSums, sums, squares) = (new int[count], new double[count], new double[count], new double[count]);
        ReadOnlySpan<int> codes = factor.Codes,
            runs = values.RunOfRow;
        for (int row = 0; row < codes.Length; row++)
        {
            if (codes[row] >= 0 && runs[row] >= 0)
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

        (double[] ranks, tieTerm) = total == values.Count ? (values.RankOfRow, values.TieTerm) : RankCompared(values);
        origin = values.Origin;
        for (int row = 0; row < codes.Length; row++)
        {
            int code = codes[row];
            if (code >= 0 && runs[row] >= 0 && sizes[code] > 0)
            {
                double off = values.OffsetOfRow[row];
                rankSums[code] += ranks[row];
                sums[code] += off;
                squares[code] += off * off;
            }
        }
    }

    public Computed<ValueAssociation> Associate()
    {
        Computed<ChiSquareResult> kruskalWallis = KruskalWallis.FromRankSums(rankSums, sizes, tieTerm);
        if (kruskalWallis.Missing is { } missing)
        {
            return missing;
        }

        int[] used = [.. Enumerable.Range(0, sizes.Length).Where(level => sizes[level] > 0)];
        GroupSummary[] groups = [.. used.Select(Summary)];
        return new ValueAssociation(
            factor.Name,
            total,
            used.Length,
            tooSmall,
            kruskalWallis.Value,
            kruskalWallis.Value.P,
            EffectSize.EpsilonSquared(kruskalWallis.Value.Statistic, total),
            WelchAnova.Test(groups),
            OmegaSquared(groups),
            Furthest(used)
        );
    }

    /// <summary>Ranks again among the parts compared: those of unknown or too small levels leave gaps in the ranks of all.</summary>
    private (double[] RankOfRow, double TieTerm) RankCompared(RankedValues values)
    {
        var runSizes = new int[values.Runs];
        ReadOnlySpan<int> codes = factor.Codes;
        for (int row = 0; row < codes.Length; row++)
        {
            if (codes[row] >= 0 && values.RunOfRow[row] >= 0 && sizes[codes[row]] > 0)
            {
                runSizes[values.RunOfRow[row]]++;
            }
        }

        return RankedValues.Rank(runSizes, values.RunOfRow);
    }

    private GroupSummary Summary(int level)
    {
        double n = sizes[level],
            mean = sums[level] / n;
        double variance = n > 1 ? Math.Max(0, (squares[level] - n * mean * mean) / (n - 1)) : 0;
        return new GroupSummary(sizes[level], origin + mean, variance);
    }

    private double OmegaSquared(GroupSummary[] groups)
    {
        double mean = sums.Where((_, level) => sizes[level] > 0).Sum() / total + origin;
        double between = groups.Sum(g => g.Size * (g.Mean - mean) * (g.Mean - mean)),
            within = groups.Sum(g => (g.Size - 1) * g.Variance);
        double error = within / (total - groups.Length);
        return Math.Max(0, (between - (groups.Length - 1) * error) / (between + within + error));
    }

    /// <summary>
    /// The level furthest out, by its rank sum in standard deviations, so that a large level is not outdone by a few stray values.
    /// </summary>
    private LevelShift Furthest(int[] used)
    {
        int level = used.MaxBy(l =>
            Math.Abs(rankSums[l] - sizes[l] * (total + 1.0) / 2) / Math.Sqrt((double)sizes[l] * (total - sizes[l]))
        );
        double others = (used.Sum(l => sums[l]) - sums[level]) / (total - sizes[level]) + origin;
        return new LevelShift(
            factor.Levels[level],
            Summary(level),
            others,
            EffectSize.CliffsDelta(rankSums[level], sizes[level], total - sizes[level])
        );
    }
}
