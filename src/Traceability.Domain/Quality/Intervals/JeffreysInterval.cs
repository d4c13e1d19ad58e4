using Traceability.Domain.Quality.Distributions;

namespace Traceability.Domain.Quality.Intervals;

/// <summary>
/// Jeffreys' interval for a proportion: the a/2 and 1 - a/2 quantiles of a beta distribution with shapes k + 1/2 and n - k + 1/2.
/// </summary>
/// <remarks>
/// Valid for n of 1 or more; the lower end is set to 0 at k = 0 and the upper end to 1 at k = n. No parts: "not enough data".
/// Source: Brown, Cai and DasGupta, Statistical Science 16 (2001), with their change at the edges. Checked by F7-012.
/// </remarks>
public static class JeffreysInterval
{
    /// <summary>The interval for the proportion behind <paramref name="successes"/> of <paramref name="trials"/>.</summary>
    /// <param name="successes">k, from 0 to n.</param>
    /// <param name="trials">n, 0 or more.</param>
    /// <param name="confidence">The confidence level, between 0 and 1.</param>
    public static Computed<Interval> Of(int successes, int trials, double confidence = Interval.UsualConfidence)
    {
        Interval.RequireConfidence(confidence);
        if (ProportionCount.Missing(successes, trials) is { } missing)
        {
            return missing;
        }

        double tail = (1 - confidence) / 2,
            a = successes + 0.5,
            b = trials - successes + 0.5;
        double lower = successes == 0 ? 0 : BetaDistribution.Quantile(a, b, tail);
        double upper = successes == trials ? 1 : 1 - BetaDistribution.Quantile(b, a, tail);
        return new Interval(lower, upper, confidence);
    }
}
