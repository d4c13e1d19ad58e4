namespace Traceability.Domain.Quality.Summaries;

/// <summary>
/// The ranks 1..n of values, equal values sharing the mean of their ranks, and the tie term Sum (t^3 - t) that rank tests need.
/// </summary>
/// <remarks>Values must be finite. Source: any text on rank tests. Checked by F17-002, F17-013 and <c>ValueCauseRankingTests</c>.</remarks>
public sealed class Midranks
{
    private Midranks(double[] ranks, double tieTerm) => (Ranks, TieTerm) = (ranks, tieTerm);

    /// <summary>The rank of each value, in the order given.</summary>
    public IReadOnlyList<double> Ranks { get; }

    /// <summary>Sum over all runs of t equal values of t^3 - t; 0 without ties.</summary>
    public double TieTerm { get; }

    /// <summary>Ranks the values.</summary>
    /// <param name="values">The values in any order.</param>
    public static Midranks Of(IReadOnlyList<double> values)
    {
        Sample.RequireFinite(values);
        double[] sorted = [.. values];
        int[] order = [.. Enumerable.Range(0, sorted.Length)];
        Array.Sort(sorted, order);
        var ranks = new double[sorted.Length];
        double tieTerm = 0;
        for (int start = 0, end; start < sorted.Length; start = end)
        {
            end = start + 1;
            while (end < sorted.Length && sorted[end] == sorted[start])
            {
                end++;
            }

            double tied = end - start,
                rank = (start + 1 + end) / 2.0;
            tieTerm += tied * (tied * tied - 1);
            for (int i = start; i < end; i++)
            {
                ranks[order[i]] = rank;
            }
        }

        return new Midranks(ranks, tieTerm);
    }
}
