using Traceability.Domain.Quality.Distributions;

namespace Traceability.Domain.Quality.Comparisons;

/// <summary>
/// Fisher's exact test of a two-by-two table, with the odds ratio that conditions on both margins and its exact interval.
/// </summary>
/// <remarks>
/// With the margins fixed the failures here are hypergeometric. Two-sided p = Sum P(x) over all x with P(x) &lt;= P(a) (1 + 1e-7).
/// The odds ratio omega solves E(X; omega) = a; its interval solves P(X >= a; omega_low) = P(X &lt;= a; omega_high) = (1 - confidence)/2.
/// Valid for any counts with both groups and both results present; otherwise "not enough data". Conservative with few failures, which is
/// the honest side to err on. Source: R. A. Fisher, Statistical Methods for Research Workers; conventions as in R's fisher.test.
/// Checked by F8 and <c>IntervalAndTestProperties</c>.
/// </remarks>
public static class FisherExact
{
    /// <summary>
    /// Tables this much more probable than the one seen still count as equally probable: guards against rounding of ties.
    /// </summary>
    private const double TieTolerance = 1e-7;

    /// <summary>The two-sided p alone: much cheaper than <see cref="Test"/> when many tables are screened.</summary>
    /// <param name="table">The counts.</param>
    public static Computed<double> TwoSidedP(FailureTable table)
    {
        if (table.Missing() is { } missing)
        {
            return missing;
        }

        return TwoSidedP(new FailureCountDistribution(table.Here, table.Elsewhere, table.Failed), table.FailedHere);
    }

    /// <summary>The test, the odds ratio and its interval.</summary>
    /// <param name="table">The counts.</param>
    /// <param name="confidence">The confidence level of the interval, between 0 and 1.</param>
    public static Computed<FisherExactResult> Test(FailureTable table, double confidence = Interval.UsualConfidence)
    {
        Interval.RequireConfidence(confidence);
        if (table.Missing() is { } missing)
        {
            return missing;
        }

        var counts = new FailureCountDistribution(table.Here, table.Elsewhere, table.Failed);
        long seen = table.FailedHere;
        double tail = (1 - confidence) / 2;
        double lower = seen == counts.Lowest ? 0 : OmegaWhere(logOmega => counts.AtLeast(seen, logOmega) - tail, table);
        double upper =
            seen == counts.Highest ? double.PositiveInfinity : OmegaWhere(logOmega => tail - counts.AtMost(seen, logOmega), table);
        double oddsRatio =
            seen == counts.Lowest ? 0
            : seen == counts.Highest ? double.PositiveInfinity
            : OmegaWhere(logOmega => counts.Mean(logOmega) - seen, table);
        return new FisherExactResult(
            TwoSidedP(counts, seen),
            counts.AtMost(seen, 0),
            counts.AtLeast(seen, 0),
            oddsRatio,
            new Interval(lower, upper, confidence)
        );
    }

    private static double TwoSidedP(FailureCountDistribution counts, long seen)
    {
        long mode = counts.Mode(0);
        double threshold = counts.LogWeight(seen) + TieTolerance;
        if (counts.LogWeight(mode) <= threshold)
        {
            return 1;
        }

        // Weights rise up to the mode and fall after it, so the tables on the far side that count form one outer run.
        if (seen < mode)
        {
            long first = FirstWhere(mode, counts.Highest, x => counts.LogWeight(x) <= threshold);
            return Math.Min(1, counts.AtMost(seen, 0) + (first > counts.Highest ? 0 : counts.AtLeast(first, 0)));
        }

        long last = FirstWhere(counts.Lowest, mode, x => counts.LogWeight(x) > threshold) - 1;
        return Math.Min(1, counts.AtLeast(seen, 0) + (last < counts.Lowest ? 0 : counts.AtMost(last, 0)));
    }

    /// <summary>The first x from low to high for which the condition holds (it holds from there on), or high + 1.</summary>
    private static long FirstWhere(long low, long high, Func<long, bool> holds)
    {
        long end = high + 1;
        while (low < end)
        {
            long middle = low + (end - low) / 2;
            (low, end) = holds(middle) ? (low, middle) : (middle + 1, end);
        }

        return low;
    }

    /// <summary>
    /// The odds ratio where a function rising in ln omega crosses zero; the search starts at the table's own, smoothed odds ratio.
    /// </summary>
    private static double OmegaWhere(Func<double, double> rising, FailureTable t)
    {
        double start = Math.Log((t.FailedHere + 0.5) * (t.PassedElsewhere + 0.5) / ((t.PassedHere + 0.5) * (t.FailedElsewhere + 0.5)));
        double step = 1,
            low = start - step,
            high = start + step;
        while (rising(low) > 0)
        {
            low -= step *= 2;
        }

        step = 1;
        while (rising(high) < 0)
        {
            high += step *= 2;
        }

        return Math.Exp(MonotoneRoot.Find(rising, low, high));
    }
}
