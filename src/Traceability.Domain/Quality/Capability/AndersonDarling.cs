using Traceability.Domain.Quality.Distributions;
using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.Capability;

/// <summary>The answer of <see cref="AndersonDarling"/>.</summary>
/// <param name="Statistic">A^2.</param>
/// <param name="Adjusted">A^2* = A^2 (1 + 0.75/n + 2.25/n^2).</param>
/// <param name="P">The probability of as much or more from a normal process; never below 3.7e-24, where the formula ends.</param>
public sealed record AndersonDarlingResult(double Statistic, double Adjusted, double P);

/// <summary>
/// The Anderson-Darling test that values come from one normal distribution of unknown mean and spread.
/// </summary>
/// <remarks>
/// A^2 = -n - (1/n) Sum (2i - 1)[ln F(x_i) + ln(1 - F(x_{n+1-i}))], x sorted, F normal with the mean and s of the sample. p by A = A^2*:
/// A >= 0.6: exp(1.2937 - 5.709 A + 0.0186 A^2); >= 0.34: exp(0.9177 - 4.279 A - 1.38 A^2); >= 0.2: 1 - exp(-8.318 + 42.796 A - 59.938
/// A^2); else 1 - exp(-13.436 + 101.14 A - 223.73 A^2); 3.7e-24 from A = 10 on. Needs 8 values that differ, otherwise "not enough data".
/// Source: D'Agostino and Stephens, Goodness-of-Fit Techniques (1986). Checked by F11.
/// </remarks>
public static class AndersonDarling
{
    private const int Least = 8;
    private const double SmallestP = 3.7e-24;

    /// <summary>The test.</summary>
    /// <param name="values">The values in any order.</param>
    public static Computed<AndersonDarlingResult> Test(IReadOnlyList<double> values)
    {
        Sample.RequireFinite(values);
        int n = values.Count;
        if (n < Least)
        {
            return new NotEnoughData("values", Least, n);
        }

        double mean = Sample.Mean(values),
            s = Sample.StandardDeviation(values);
        if (s == 0)
        {
            return new NotEnoughData("different values", 2, 1);
        }

        double[] z = [.. values.Select(x => (x - mean) / s).Order()];
        double sum = 0;
        for (int i = 0; i < n; i++)
        {
            sum += (2.0 * i + 1) * (NormalDistribution.LogBelow(z[i]) + NormalDistribution.LogBelow(-z[n - 1 - i]));
        }

        double statistic = -n - sum / n,
            adjusted = statistic * (1 + 0.75 / n + 2.25 / n / n);
        return new AndersonDarlingResult(statistic, adjusted, P(adjusted));
    }

    private static double P(double a) =>
        a switch
        {
            < 0.2 => 1 - Math.Exp(-13.436 + 101.14 * a - 223.73 * a * a),
            < 0.34 => 1 - Math.Exp(-8.318 + 42.796 * a - 59.938 * a * a),
            < 0.6 => Math.Exp(0.9177 - 4.279 * a - 1.38 * a * a),
            < 10 => Math.Exp(1.2937 - 5.709 * a + 0.0186 * a * a),
            _ => SmallestP,
        };
}
