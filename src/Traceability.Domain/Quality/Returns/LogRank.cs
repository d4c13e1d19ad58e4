using MathNet.Numerics.LinearAlgebra;
using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.Distributions;
using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.Returns;

/// <summary>
/// The log-rank test: do units of some groups (film lots, builders) come back sooner?
/// </summary>
/// <remarks>
/// At each time of failure with d failures among n at risk, group j expects e_j = d n_j/n with covariances
/// v_jl = d (n - d)/(n - 1) (n_j/n)(delta_jl - n_l/n). chi^2 = (O - E)' V^-1 (O - E) over all groups but one, k - 1 degrees of freedom.
/// Groups without units are left out. Needs 2 groups and 1 failure while at least 2 groups are still observed; otherwise "not enough data".
/// Source: N. Mantel, Cancer Chemother. Rep. 50 (1966); as R's survdiff. Checked by F15-005.
/// </remarks>
public static class LogRank
{
    /// <summary>The test.</summary>
    /// <param name="groups">The lifetimes of each group.</param>
    public static Computed<ChiSquareResult> Test(IReadOnlyList<IReadOnlyList<Lifetime>> groups)
    {
        IReadOnlyList<Lifetime>[] used = [.. groups.Where(g => g.Count > 0)];
        if (used.Length < 2)
        {
            return new NotEnoughData("groups with units", 2, used.Length);
        }

        Sample.RequireFinite([.. used.SelectMany(g => g).Select(l => l.Time)]);
        int k = used.Length;
        double[] atRisk = [.. used.Select(g => (double)g.Count)];
        var excess = Vector<double>.Build.Dense(k);
        var covariance = Matrix<double>.Build.Dense(k, k);
        var moments = used.SelectMany((g, j) => g.Select(l => (Group: j, l.Time, l.Failed))).GroupBy(l => l.Time).OrderBy(g => g.Key);
        foreach (var moment in moments)
        {
            AddMoment([.. Enumerable.Range(0, k).Select(j => (double)moment.Count(l => l.Failed && l.Group == j))]);
            foreach (var leaving in moment)
            {
                atRisk[leaving.Group]--;
            }
        }

        // A group that was never at risk beside another one adds nothing and would make the matrix singular.
        int[] telling = [.. Enumerable.Range(0, k).Where(j => covariance[j, j] > 0)];
        if (telling.Length < 2)
        {
            return new NotEnoughData("failures while two groups are observed", 1, 0);
        }

        int[] kept = telling[..^1];
        var o = Vector<double>.Build.Dense(kept.Length, i => excess[kept[i]]);
        var v = Matrix<double>.Build.Dense(kept.Length, kept.Length, (i, j) => covariance[kept[i], kept[j]]);
        double chiSquare = Math.Max(0, o * v.Solve(o));
        return new ChiSquareResult(chiSquare, kept.Length, ChiSquareDistribution.Above(chiSquare, kept.Length));

        void AddMoment(double[] failures)
        {
            double n = atRisk.Sum(),
                d = failures.Sum();
            if (d == 0)
            {
                return;
            }

            double factor = n > 1 ? d * (n - d) / (n - 1) : 0;
            for (int j = 0; j < k; j++)
            {
                excess[j] += failures[j] - d * atRisk[j] / n;
                for (int l = 0; l < k; l++)
                {
                    covariance[j, l] += factor * (atRisk[j] / n) * ((j == l ? 1 : 0) - atRisk[l] / n);
                }
            }
        }
    }
}
