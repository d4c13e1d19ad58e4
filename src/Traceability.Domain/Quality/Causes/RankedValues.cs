namespace Traceability.Domain.Quality.Causes;

/// <summary>
/// The measured values of a table, sorted once: for each part the run of equal values it belongs to, and its midrank among all of them.
/// </summary>
internal sealed class RankedValues
{
    /// <summary>The run of a part without a value.</summary>
    public const int NoValue = -1;

    private RankedValues(int count, int[] runOfRow, double[] runValues, double[] rankOfRow, double tieTerm)
    {
        (Count, RunOfRow, RankOfRow, Runs, TieTerm) = (count, runOfRow, rankOfRow, runValues.Length, tieTerm);
        Origin = runValues.Length == 0 ? 0 : runValues[runValues.Length / 2];
        OffsetOfRow = [.. runOfRow.Select(run => run == NoValue ? 0 : runValues[run] - Origin)];
    }

    /// <summary>How many parts have a value.</summary>
    public int Count { get; }

    /// <summary>For each row the position of its value among the different values, or <see cref="NoValue"/>.</summary>
    public int[] RunOfRow { get; }

    /// <summary>How many different values there are.</summary>
    public int Runs { get; }

    /// <summary>The middle one of the different values.</summary>
    public double Origin { get; }

    /// <summary>
    /// For each row its value less <see cref="Origin"/>: sums of these keep their digits when values share a large offset.
    /// </summary>
    public double[] OffsetOfRow { get; }

    /// <summary>For each row its midrank among all values.</summary>
    public double[] RankOfRow { get; }

    /// <summary>Sum (t^3 - t) over the runs.</summary>
    public double TieTerm { get; }

    /// <exception cref="ArgumentException">A value is not a finite number.</exception>
    public static RankedValues Of(FactorTable table)
    {
        var values = new List<double>(table.Rows);
        var rows = new List<int>(table.Rows);
        ReadOnlySpan<double?> column = table.Values;
        for (int row = 0; row < column.Length; row++)
        {
            if (column[row] is { } value)
            {
                if (!double.IsFinite(value))
                {
                    throw new ArgumentException(
                        FormattableString.Invariant($"The value of row {row} is not a finite number."),
                        nameof(table)
                    );
                }

                values.Add(value);
                rows.Add(row);
            }
        }

        double[] sorted = [.. values];
        int[] order = [.. rows];
        Array.Sort(sorted, order);
        var runOfRow = new int[table.Rows];
        Array.Fill(runOfRow, NoValue);
        var runValues = new List<double>();
        var runSizes = new List<int>();
        for (int i = 0; i < sorted.Length; i++)
        {
            if (i == 0 || sorted[i] != sorted[i - 1])
            {
                runValues.Add(sorted[i]);
                runSizes.Add(0);
            }

            runSizes[^1]++;
            runOfRow[order[i]] = runValues.Count - 1;
        }

        (double[] rankOfRow, double tieTerm) = Rank([.. runSizes], runOfRow);
        return new RankedValues(sorted.Length, runOfRow, [.. runValues], rankOfRow, tieTerm);
    }

    /// <summary>The midrank of each row and the tie term, from the number of values in each run.</summary>
    public static (double[] RankOfRow, double TieTerm) Rank(int[] runSizes, int[] runOfRow)
    {
        var midranks = new double[runSizes.Length];
        double before = 0,
            tieTerm = 0;
        for (int run = 0; run < runSizes.Length; run++)
        {
            double size = runSizes[run];
            midranks[run] = before + (size + 1) / 2;
            before += size;
            tieTerm += size * (size * size - 1);
        }

        return ([.. runOfRow.Select(run => run == NoValue ? 0 : midranks[run])], tieTerm);
    }
}
