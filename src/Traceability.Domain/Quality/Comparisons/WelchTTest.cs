using Traceability.Domain.Quality.Distributions;
using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.Comparisons;

/// <summary>
/// Welch's comparison of two means that need not spread alike: t = (m1 - m2) / sqrt(v1 + v2), v_i = s_i^2/n_i,
/// nu = (v1 + v2)^2 / (v1^2/(n1 - 1) + v2^2/(n2 - 1)).
/// </summary>
/// <remarks>
/// Needs 2 values on each side and some spread; otherwise "not enough data". Assumes roughly normal values or enough of them; for skewed
/// readings take <see cref="KruskalWallis"/>. Source: B. L. Welch, Biometrika 34 (1947). Checked by F17-001.
/// </remarks>
public static class WelchTTest
{
    /// <summary>Compares two groups of values in the same unit.</summary>
    /// <param name="first">The first group.</param>
    /// <param name="second">The second group.</param>
    /// <param name="confidence">The confidence level of the interval of the difference, between 0 and 1.</param>
    public static Computed<MeanDifferenceResult> Test(
        IReadOnlyList<double> first,
        IReadOnlyList<double> second,
        double confidence = Interval.UsualConfidence
    )
    {
        Interval.RequireConfidence(confidence);
        int smaller = Math.Min(first.Count, second.Count);
        if (smaller < 2)
        {
            return new NotEnoughData("values in each of the two groups", 2, smaller);
        }

        double v1 = Sample.Variance(first) / first.Count,
            v2 = Sample.Variance(second) / second.Count,
            v = v1 + v2;
        if (v == 0)
        {
            return new NotEnoughData("different values inside a group", 2, 1);
        }

        double nu = v * v / (v1 * v1 / (first.Count - 1) + v2 * v2 / (second.Count - 1));
        double difference = Sample.Mean(first) - Sample.Mean(second),
            error = Math.Sqrt(v),
            t = difference / error;
        double half = StudentDistribution.TwoSidedQuantile(confidence, nu) * error;
        return new MeanDifferenceResult(
            t,
            nu,
            StudentDistribution.OutsideBothSides(t, nu),
            difference,
            new Interval(difference - half, difference + half, confidence)
        );
    }
}
