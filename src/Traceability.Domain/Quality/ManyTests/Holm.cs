namespace Traceability.Domain.Quality.ManyTests;

/// <summary>
/// Adjusts p-values so that the chance of even one false call stays below the level: p_(i) = max over j &lt;= i of min(1, (m - j + 1)
/// p_(j)).
/// </summary>
/// <remarks>
/// Valid for p from 0 to 1 in any order, and for none at all; the answers keep the order given. Never smaller than
/// <see cref="BenjaminiHochberg"/>. Source: S. Holm, Scand. J. Statist. 6 (1979); as R's p.adjust "holm". Checked by
/// <c>ProportionsAgainstPublishedExamples</c> and <c>IntervalAndTestProperties</c>.
/// </remarks>
public static class Holm
{
    /// <summary>The adjusted p of each question, in the order given.</summary>
    /// <param name="pValues">The raw p-values.</param>
    /// <exception cref="ArgumentException">A p-value does not lie from 0 to 1.</exception>
    public static IReadOnlyList<double> Adjust(IReadOnlyList<double> pValues)
    {
        int[] order = PValues.SmallestFirst(pValues);
        var adjusted = new double[order.Length];
        double most = 0;
        for (int rank = 1; rank <= order.Length; rank++)
        {
            int i = order[rank - 1];
            adjusted[i] = most = Math.Max(most, Math.Min(1, pValues[i] * (order.Length - rank + 1)));
        }

        return adjusted;
    }
}
