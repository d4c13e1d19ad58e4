namespace Traceability.Domain.Quality.ManyTests;

/// <summary>
/// Adjusts p-values for having asked many questions at once, holding the expected share of false discoveries:
/// q_(i) = min over j >= i of min(1, m p_(j) / j).
/// </summary>
/// <remarks>
/// Valid for p from 0 to 1 in any order, and for none at all; the answers keep the order given. An adjusted p below 0.05 means: of all
/// those called, about one in twenty may be chance. Source: Benjamini and Hochberg, J. R. Stat. Soc. B 57 (1995); as R's p.adjust "BH".
/// Checked by F10 and <c>IntervalAndTestProperties</c>.
/// </remarks>
public static class BenjaminiHochberg
{
    /// <summary>The adjusted p of each question, in the order given.</summary>
    /// <param name="pValues">The raw p-values.</param>
    /// <exception cref="ArgumentException">A p-value does not lie from 0 to 1.</exception>
    public static IReadOnlyList<double> Adjust(IReadOnlyList<double> pValues)
    {
        int[] order = PValues.SmallestFirst(pValues);
        var adjusted = new double[order.Length];
        double least = 1;
        for (int rank = order.Length; rank >= 1; rank--)
        {
            int i = order[rank - 1];
            adjusted[i] = least = Math.Min(least, pValues[i] * ((double)order.Length / rank));
        }

        return adjusted;
    }
}
