using Traceability.Domain.Quality.Distributions;

namespace Traceability.Domain.Quality.Comparisons;

/// <summary>The answer of <see cref="ChiSquareIndependence"/>.</summary>
/// <param name="Test">Chi-square with its degrees of freedom and p, without continuity correction.</param>
/// <param name="CramersV">sqrt(chi^2 / (N min(rows - 1, columns - 1))): 0 for no association, 1 when one tells the other.</param>
/// <param name="SmallestExpected">The smallest expected count; below 5 the p is rough and an exact test is to be preferred.</param>
public sealed record ChiSquareIndependenceResult(ChiSquareResult Test, double CramersV, double SmallestExpected);

/// <summary>
/// Pearson's chi-square test that rows and columns of a table of counts are independent: Sum (O - E)^2/E, E = row total x column total / N.
/// </summary>
/// <remarks>
/// Empty rows and columns are left out. Needs 2 rows and 2 columns with counts; otherwise "not enough data". Rough where an expected count
/// is below 5, and says so by <see cref="ChiSquareIndependenceResult.SmallestExpected"/>. Sources: K. Pearson (1900); H. Cramer,
/// Mathematical Methods of Statistics (1946). Checked by <c>TablesAgainstPublishedExamples</c>.
/// </remarks>
public static class ChiSquareIndependence
{
    /// <summary>The test.</summary>
    /// <param name="counts">counts[row][column], all rows of the same length, no count negative.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rows are not all of the same length, or a count is negative.</exception>
    public static Computed<ChiSquareIndependenceResult> Test(IReadOnlyList<IReadOnlyList<int>> counts)
    {
        int width = counts.Count == 0 ? 0 : counts[0].Count;
        var rows = new double[counts.Count];
        var columns = new double[width];
        for (int r = 0; r < counts.Count; r++)
        {
            ArgumentOutOfRangeException.ThrowIfNotEqual(counts[r].Count, width);
            for (int c = 0; c < width; c++)
            {
                ArgumentOutOfRangeException.ThrowIfNegative(counts[r][c]);
                rows[r] += counts[r][c];
                columns[c] += counts[r][c];
            }
        }

        int usedRows = rows.Count(t => t > 0),
            usedColumns = columns.Count(t => t > 0),
            narrower = Math.Min(usedRows, usedColumns) - 1;
        if (narrower < 1)
        {
            return new NotEnoughData("rows and columns with counts", 2, narrower + 1);
        }

        double n = rows.Sum(),
            chiSquare = 0,
            smallest = double.PositiveInfinity;
        for (int r = 0; r < rows.Length; r++)
        {
            for (int c = 0; c < width; c++)
            {
                double expected = rows[r] * columns[c] / n;
                if (expected > 0)
                {
                    double off = counts[r][c] - expected;
                    chiSquare += off * off / expected;
                    smallest = Math.Min(smallest, expected);
                }
            }
        }

        int df = (usedRows - 1) * (usedColumns - 1);
        return new ChiSquareIndependenceResult(
            new ChiSquareResult(chiSquare, df, ChiSquareDistribution.Above(chiSquare, df)),
            Math.Min(1, Math.Sqrt(chiSquare / (n * narrower))),
            smallest
        );
    }
}
