using Traceability.Domain.Quality.Distributions;

namespace Traceability.Domain.Quality.Intervals;

/// <summary>
/// Wilson's score interval for a proportion: (p + z^2/2n -+ z sqrt(p (1 - p)/n + z^2/4n^2)) / (1 + z^2/n), without continuity correction.
/// </summary>
/// <remarks>
/// p = k/n, z the two-sided normal quantile. Valid for n of 1 or more, k from 0 to n; stays inside 0 to 1, and reaches 0 at k = 0 and 1 at
/// k = n. No parts: "not enough data". Source: E. B. Wilson, JASA 22 (1927); recommended for small n by Brown, Cai and DasGupta,
/// Statistical Science 16 (2001). Checked by F7 and <c>IntervalAndTestProperties</c>.
/// </remarks>
public static class WilsonInterval
{
    /// <summary>The interval for the proportion behind <paramref name="successes"/> of <paramref name="trials"/>.</summary>
    /// <param name="successes">k, from 0 to n.</param>
    /// <param name="trials">n, 0 or more.</param>
    /// <param name="confidence">The confidence level, between 0 and 1.</param>
    public static Computed<Interval> Of(int successes, int trials, double confidence = Interval.UsualConfidence)
    {
        double z = NormalDistribution.TwoSidedQuantile(confidence);
        if (ProportionCount.Missing(successes, trials) is { } missing)
        {
            return missing;
        }

        double n = trials,
            p = successes / n,
            zz = z * z;
        double centre = p + zz / (2 * n),
            half = z * Math.Sqrt(p * (1 - p) / n + zz / (4 * n * n)),
            scale = 1 + zz / n;
        // The ends are exact at the edges; the difference of two equal square roots is not.
        double lower = successes == 0 ? 0 : (centre - half) / scale,
            upper = successes == trials ? 1 : (centre + half) / scale;
        return new Interval(lower, upper, confidence);
    }
}
