using Traceability.Domain.Quality.Distributions;
using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.Outliers;

/// <summary>The answer of <see cref="Grubbs"/>.</summary>
/// <param name="Statistic">G, the largest distance from the mean in standard deviations.</param>
/// <param name="Critical">What G must exceed.</param>
/// <param name="Index">The position (from 0) of the value in question.</param>
public sealed record GrubbsResult(double Statistic, double Critical, int Index)
{
    /// <summary>True when the value is further out than chance allows.</summary>
    public bool IsOutlier => Statistic > Critical;
}

/// <summary>
/// Grubbs' test for one outlier among normal values: G = max |x - mean|/s against (n - 1)/sqrt(n) sqrt(t^2/(n - 2 + t^2)), t the upper
/// a/(2n) quantile (a/n for one side known beforehand) of Student's t with n - 2.
/// </summary>
/// <remarks>
/// Needs 3 values that differ, otherwise "not enough data". An outlier is a reason to look, not a reason to delete. Source: F. E. Grubbs,
/// Technometrics 11 (1969); NIST e-Handbook 1.3.5.17.1. Checked by F17-009, F17-010.
/// </remarks>
public static class Grubbs
{
    /// <summary>The two-sided test for the value furthest out.</summary>
    /// <param name="values">The values in any order.</param>
    /// <param name="level">a, the chance of a false alarm, between 0 and 1.</param>
    public static Computed<GrubbsResult> Test(IReadOnlyList<double> values, double level = 0.05)
    {
        if (values.Count < 3)
        {
            return new NotEnoughData("values", 3, values.Count);
        }

        double mean = Sample.Mean(values),
            s = Sample.StandardDeviation(values);
        if (s == 0)
        {
            return new NotEnoughData("different values", 2, 1);
        }

        int furthest = Enumerable.Range(0, values.Count).MaxBy(i => Math.Abs(values[i] - mean));
        return new GrubbsResult(Math.Abs(values[furthest] - mean) / s, Critical(values.Count, level / 2), furthest);
    }

    /// <summary>The critical value of a one-sided test; halve the level for a two-sided one.</summary>
    /// <param name="values">n, 3 or more.</param>
    /// <param name="oneSidedLevel">a, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">n is below 3.</exception>
    public static double Critical(int values, double oneSidedLevel)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(values, 3);
        Interval.RequireConfidence(oneSidedLevel);
        double n = values,
            t = StudentDistribution.UpperQuantile(oneSidedLevel / n, n - 2);
        return (n - 1) / Math.Sqrt(n) * Math.Sqrt(t * t / (n - 2 + t * t));
    }
}
