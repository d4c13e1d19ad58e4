using Traceability.Domain.Quality.Distributions;

namespace Traceability.Domain.Quality.Capability;

/// <summary>
/// How far capability indices from n values can be trusted.
/// </summary>
/// <remarks>
/// Cp: Cp sqrt(chi2_{a/2, n-1}/(n - 1)) .. Cp sqrt(chi2_{1-a/2, n-1}/(n - 1)). Cpk (Bissell): Cpk -+ z sqrt(1/(9 n) + Cpk^2/(2 (n - 1))),
/// an approximation that is fair from about 30 values. One-sided index: exact by the noncentral t with n - 1 degrees of freedom and
/// noncentrality 3 sqrt(n) C. Valid for n of 2 or more and, for Cp, 0 or more; others throw. They hold as they stand for indices from the
/// overall s; for a short-term s they are slightly too narrow. Sources: A. F. Bissell, Applied Statistics 39 (1990); NIST e-Handbook 6.1.6.
/// Checked by F6.
/// </remarks>
public static class CapabilityIntervals
{
    /// <summary>The interval of Cp or Pp.</summary>
    /// <param name="index">The index found, 0 or more.</param>
    /// <param name="values">n, 2 or more.</param>
    /// <param name="confidence">The confidence level, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The index is negative, n is below 2, or the confidence level does not lie between 0 and 1.
    /// </exception>
    public static Interval OfPotential(double index, int values, double confidence = Interval.UsualConfidence)
    {
        Interval.RequireConfidence(confidence);
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        ArgumentOutOfRangeException.ThrowIfLessThan(values, 2);
        double tail = (1 - confidence) / 2;
        return new Interval(
            index * Math.Sqrt(ChiSquareDistribution.Quantile(tail, values - 1) / (values - 1)),
            index * Math.Sqrt(ChiSquareDistribution.Quantile(1 - tail, values - 1) / (values - 1)),
            confidence
        );
    }

    /// <summary>The interval of Cpk or Ppk.</summary>
    /// <param name="index">The index found.</param>
    /// <param name="values">n, 2 or more.</param>
    /// <param name="confidence">The confidence level, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">n is below 2, or the confidence level does not lie between 0 and 1.</exception>
    public static Interval OfActual(double index, int values, double confidence = Interval.UsualConfidence)
    {
        double half = NormalDistribution.TwoSidedQuantile(confidence) * BissellError(index, values);
        return new Interval(index - half, index + half, confidence);
    }

    /// <summary>The value that Cpk or Ppk exceeds with the given confidence (one-sided).</summary>
    /// <param name="index">The index found.</param>
    /// <param name="values">n, 2 or more.</param>
    /// <param name="confidence">The confidence level, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">n is below 2, or the confidence level does not lie between 0 and 1.</exception>
    public static double ActualExceeds(double index, int values, double confidence = Interval.UsualConfidence)
    {
        Interval.RequireConfidence(confidence);
        return index - NormalDistribution.Quantile(confidence) * BissellError(index, values);
    }

    /// <summary>
    /// The exact interval of an index towards one limit, (USL - mean)/(3 s) or (mean - LSL)/(3 s), for a normal process.
    /// </summary>
    /// <param name="index">The index found.</param>
    /// <param name="values">n, 2 or more.</param>
    /// <param name="confidence">The confidence level, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">n is below 2, or the confidence level does not lie between 0 and 1.</exception>
    public static Interval OfOneSided(double index, int values, double confidence = Interval.UsualConfidence)
    {
        Interval.RequireConfidence(confidence);
        double tail = (1 - confidence) / 2;
        return new Interval(ExactBound(index, values, 1 - tail), ExactBound(index, values, tail), confidence);
    }

    /// <summary>The value that an index towards one limit exceeds with the given confidence (exact).</summary>
    /// <param name="index">The index found.</param>
    /// <param name="values">n, 2 or more.</param>
    /// <param name="confidence">The confidence level, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">n is below 2, or the confidence level does not lie between 0 and 1.</exception>
    public static double OneSidedExceeds(double index, int values, double confidence = Interval.UsualConfidence)
    {
        Interval.RequireConfidence(confidence);
        return ExactBound(index, values, confidence);
    }

    private static double BissellError(double index, int values)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(values, 2);
        return Math.Sqrt(1 / (9.0 * values) + index * index / (2.0 * (values - 1)));
    }

    /// <summary>
    /// The true index at which an index as large as the one found, or less, comes up with probability <paramref name="p"/>.
    /// </summary>
    private static double ExactBound(double index, int values, double p)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(values, 2);
        double scale = 3 * Math.Sqrt(values),
            t = scale * index,
            step = 1 + BissellError(index, values) * scale;
        double low = t - step,
            high = t + step;
        while (Excess(low) < 0)
        {
            low -= step *= 2;
        }

        while (Excess(high) > 0)
        {
            high += step *= 2;
        }

        return MonotoneRoot.Find(Excess, low, high) / scale;

        double Excess(double noncentrality) => NoncentralStudentDistribution.Below(t, values - 1, noncentrality) - p;
    }
}
