using MathNet.Numerics.Statistics;

namespace Traceability.Domain.Quality.Summaries;

/// <summary>
/// Mean, spread and middle of a list of values, computed so that digits survive a large common offset.
/// </summary>
/// <remarks>
/// mean = m + Sum(x - m)/n with m a first mean; s^2 = (Sum (x - mean)^2 - (Sum (x - mean))^2 / n) / (n - 1).
/// Values must be finite. Source: Chan, Golub and LeVeque, The American Statistician 37 (1983).
/// Checked by F0 (NIST StRD) to 1e-12.
/// </remarks>
public static class Sample
{
    /// <summary>The arithmetic mean; 0 values throw.</summary>
    /// <param name="values">The values.</param>
    public static double Mean(IReadOnlyList<double> values)
    {
        RequireFinite(values);
        ArgumentOutOfRangeException.ThrowIfZero(values.Count, nameof(values));
        double sum = 0,
            rest = 0;
        for (int i = 0; i < values.Count; i++)
        {
            sum += values[i];
        }

        double mean = sum / values.Count;
        for (int i = 0; i < values.Count; i++)
        {
            rest += values[i] - mean;
        }

        return mean + rest / values.Count;
    }

    /// <summary>Sum (x - mean)^2.</summary>
    /// <param name="values">The values, one or more.</param>
    public static double SumOfSquares(IReadOnlyList<double> values)
    {
        double mean = Mean(values),
            squares = 0,
            rest = 0;
        for (int i = 0; i < values.Count; i++)
        {
            double off = values[i] - mean;
            squares += off * off;
            rest += off;
        }

        return Math.Max(0, squares - rest * rest / values.Count);
    }

    /// <summary>s^2, with n - 1; fewer than 2 values throw.</summary>
    /// <param name="values">The values.</param>
    public static double Variance(IReadOnlyList<double> values)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(values.Count, 2, nameof(values));
        return SumOfSquares(values) / (values.Count - 1);
    }

    /// <summary>s, with n - 1; fewer than 2 values throw.</summary>
    /// <param name="values">The values.</param>
    public static double StandardDeviation(IReadOnlyList<double> values) => Math.Sqrt(Variance(values));

    /// <summary>The middle value, or the mean of the two in the middle; 0 values throw.</summary>
    /// <param name="values">The values in any order.</param>
    public static double Median(IReadOnlyList<double> values)
    {
        RequireFinite(values);
        ArgumentOutOfRangeException.ThrowIfZero(values.Count, nameof(values));
        return ArrayStatistics.MedianInplace([.. values]);
    }

    /// <summary>The difference between the largest and the smallest value; 0 values throw.</summary>
    /// <param name="values">The values.</param>
    public static double Range(IReadOnlyList<double> values)
    {
        RequireFinite(values);
        ArgumentOutOfRangeException.ThrowIfZero(values.Count, nameof(values));
        double low = values[0],
            high = values[0];
        for (int i = 1; i < values.Count; i++)
        {
            low = Math.Min(low, values[i]);
            high = Math.Max(high, values[i]);
        }

        return high - low;
    }

    /// <summary>Guards what is computed from values.</summary>
    /// <param name="values">The values.</param>
    /// <exception cref="ArgumentException">A value is not a finite number; the message says which, from 0.</exception>
    public static void RequireFinite(IReadOnlyList<double> values)
    {
        for (int i = 0; i < values.Count; i++)
        {
            if (!double.IsFinite(values[i]))
            {
                throw new ArgumentException(FormattableString.Invariant($"Value {i} is not a finite number."), nameof(values));
            }
        }
    }
}
