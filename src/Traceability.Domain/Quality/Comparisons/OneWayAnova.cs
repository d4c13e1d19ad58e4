using Traceability.Domain.Quality.Distributions;
using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.Comparisons;

/// <summary>
/// One-way analysis of variance: F = (SSB / (k - 1)) / (SSW / (N - k)) for k groups and N values.
/// </summary>
/// <remarks>
/// Empty groups are left out. Needs 2 groups, one value more than groups, and values that differ; otherwise "not enough data". No spread
/// inside the groups gives an infinite F and p = 0. Assumes equal spread: <see cref="WelchAnova"/> does not.
/// Source: NIST e-Handbook 7.4.3. Checked by F0-004, F0-005 (NIST StRD) and F17-003.
/// </remarks>
public static class OneWayAnova
{
    /// <summary>Compares the means of several groups.</summary>
    /// <param name="groups">The values of each group, in the same unit.</param>
    public static Computed<OneWayAnovaResult> Test(IReadOnlyList<IReadOnlyList<double>> groups)
    {
        var used = GroupedValues.WithAtLeast(1, groups);
        if (used.Count < 2)
        {
            return new NotEnoughData("groups with values", 2, used.Count);
        }

        int n = used.Sum(g => g.Count),
            dfWithin = n - used.Count;
        if (dfWithin < 1)
        {
            return new NotEnoughData("values in all groups together", used.Count + 1, n);
        }

        // Taking one mean off everything first keeps the digits of values that share a large offset.
        double origin = Sample.Mean([.. used.Select(Sample.Mean)]),
            between = 0,
            within = 0,
            rest = 0;
        double[] offsets = [.. used.Select(g => Sample.Mean([.. g.Select(x => x - origin)]))];
        double mean = offsets.Zip(used, (offset, g) => offset * g.Count).Sum() / n;
        for (int i = 0; i < used.Count; i++)
        {
            double off = offsets[i] - mean;
            between += used[i].Count * off * off;
            rest += used[i].Count * off;
            within += Sample.SumOfSquares(used[i]);
        }

        between -= rest * rest / n;
        if (between <= 0 && within == 0)
        {
            return new NotEnoughData("different values", 2, 1);
        }

        double f = within == 0 ? double.PositiveInfinity : between / (used.Count - 1) / (within / dfWithin);
        return new OneWayAnovaResult(
            between,
            within,
            new VarianceRatioResult(f, used.Count - 1, dfWithin, FDistribution.Above(f, used.Count - 1, dfWithin))
        );
    }
}
