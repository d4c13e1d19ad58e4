using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.ManyTests;

namespace Traceability.Domain.Quality.Causes;

/// <summary>
/// Ranks every factor by its association with a measured value: Kruskal-Wallis over its levels, adjusted over all factors by
/// Benjamini-Hochberg, with Welch's analysis of variance and effect sizes beside it.
/// </summary>
/// <remarks>
/// Values are sorted once; each factor then costs a few walks over the rows. Values must be finite; parts without a value or of unknown
/// level are left out. A level with fewer than the least number of values is not compared. Order: adjusted p, then raw p, then the larger
/// effect. Needs one factor with 2 levels to compare and values that differ; otherwise "not enough data".
/// Checked by <c>ValueCauseRankingTests</c> against <see cref="Comparisons.KruskalWallis"/> and <see cref="WelchAnova"/> on the same data.
/// </remarks>
public static class ValueCauseRanking
{
    /// <summary>Ranks the factors of a table of parts with values.</summary>
    /// <param name="table">The parts.</param>
    /// <param name="leastValues">The least number of values of a level to be compared, 2 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="leastValues"/> is below 2.</exception>
    public static Computed<ValueCauseReport> Rank(FactorTable table, int leastValues = CauseRanking.UsualLeastParts)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(leastValues, 2);
        RankedValues values = RankedValues.Of(table);
        if (values.Count < 2 * leastValues)
        {
            return new NotEnoughData("values", 2 * leastValues, values.Count);
        }

        var found = new List<ValueAssociation>();
        var without = new List<string>();
        foreach (FactorColumn factor in table.Factors)
        {
            if (new RankedLevels(factor, values, leastValues).Associate() is { IsKnown: true } answer)
            {
                found.Add(answer.Value);
            }
            else
            {
                without.Add(factor.Name);
            }
        }

        if (found.Count == 0)
        {
            return new NotEnoughData("levels of one factor with enough differing values", 2, Math.Min(1, table.Factors.Count));
        }

        IReadOnlyList<double> adjusted = BenjaminiHochberg.Adjust([.. found.Select(a => a.KruskalWallis.P)]);
        return new ValueCauseReport(
            [
                .. found
                    .Select((a, i) => a with { AdjustedP = adjusted[i] })
                    .OrderBy(a => a.AdjustedP)
                    .ThenBy(a => a.KruskalWallis.P)
                    .ThenByDescending(a => a.EpsilonSquared),
            ],
            without
        );
    }
}
