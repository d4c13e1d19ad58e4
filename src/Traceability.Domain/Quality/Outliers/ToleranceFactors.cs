using MathNet.Numerics.Integration;
using Traceability.Domain.Quality.Distributions;

namespace Traceability.Domain.Quality.Outliers;

/// <summary>
/// Factors k so that mean + k s (or mean -+ k s) of n normal values covers a share p of the process with a stated confidence.
/// </summary>
/// <remarks>
/// One-sided, exact: k = t'_{conf}(n - 1, z_p sqrt n)/sqrt n with the noncentral t. Two-sided by Howe: k = z_{(1+p)/2} sqrt((n - 1)(1 +
/// 1/n)/chi2), chi2 the lower 1 - conf quantile with n - 1. Two-sided, exact: k solves
/// conf = sqrt(2n/pi) Integral_0^inf P(chi2_{n-1} > (n - 1) r(x)^2/k^2) exp(-n x^2/2) dx with Phi(x + r) - Phi(x - r) = p.
/// Valid for n of 2 or more and p, conf between 0 and 1; others throw. Sources: NIST e-Handbook 7.2.6.3; W. G. Howe, JASA 64 (1969).
/// Checked by F17-004 to F17-006.
/// </remarks>
public static class ToleranceFactors
{
    /// <summary>The factor for one side.</summary>
    /// <param name="values">n.</param>
    /// <param name="share">p.</param>
    /// <param name="confidence">conf.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// n is below 2, or <paramref name="share"/> or <paramref name="confidence"/> does not lie between 0 and 1.
    /// </exception>
    public static double OneSided(int values, double share, double confidence)
    {
        Require(values, share, confidence);
        double root = Math.Sqrt(values);
        return NoncentralStudentDistribution.Quantile(confidence, values - 1, NormalDistribution.Quantile(share) * root) / root;
    }

    /// <summary>The factor for both sides by Howe's approximation, the one in printed tables.</summary>
    /// <param name="values">n.</param>
    /// <param name="share">p.</param>
    /// <param name="confidence">conf.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// n is below 2, or <paramref name="share"/> or <paramref name="confidence"/> does not lie between 0 and 1.
    /// </exception>
    public static double TwoSided(int values, double share, double confidence)
    {
        Require(values, share, confidence);
        double df = values - 1;
        return NormalDistribution.Quantile((1 + share) / 2)
            * Math.Sqrt(df * (1 + 1.0 / values) / ChiSquareDistribution.Quantile(1 - confidence, df));
    }

    /// <summary>The factor for both sides, exact.</summary>
    /// <param name="values">n.</param>
    /// <param name="share">p.</param>
    /// <param name="confidence">conf.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// n is below 2, or <paramref name="share"/> or <paramref name="confidence"/> does not lie between 0 and 1.
    /// </exception>
    public static double TwoSidedExact(int values, double share, double confidence)
    {
        Require(values, share, confidence);
        double df = values - 1,
            reach = 9 / Math.Sqrt(values);
        var rule = new GaussLegendreRule(0, reach, 64);
        double[] radii = [.. rule.Abscissas.Select(x => Radius(x, share))];
        return MonotoneRoot.FindAbove(k => Confidence(k) - confidence, 1e-6, 2 * TwoSided(values, share, confidence));

        double Confidence(double k)
        {
            double sum = 0;
            for (int i = 0; i < radii.Length; i++)
            {
                double x = rule.GetAbscissa(i);
                sum +=
                    rule.GetWeight(i) * ChiSquareDistribution.Above(df * radii[i] * radii[i] / (k * k), df) * Math.Exp(-values * x * x / 2);
            }

            return sum * Math.Sqrt(2 * values / Math.PI);
        }
    }

    /// <summary>The half width r around x that holds a share p of a standard normal.</summary>
    private static double Radius(double x, double share) =>
        MonotoneRoot.FindAbove(r => NormalDistribution.Below(x + r) - NormalDistribution.Below(x - r) - share, 0, x + 10);

    private static void Require(int values, double share, double confidence)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(values, 2);
        Interval.RequireConfidence(share);
        Interval.RequireConfidence(confidence);
    }
}
