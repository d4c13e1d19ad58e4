using Traceability.Domain.Quality.Distributions;

namespace Traceability.Domain.Quality.Intervals;

/// <summary>
/// The exact (Clopper-Pearson) interval for a proportion: beta quantiles B(a/2; k, n - k + 1) and B(1 - a/2; k + 1, n - k), a = 1 -
/// confidence.
/// </summary>
/// <remarks>
/// Never covers less often than stated, and so is wider than Wilson's. Valid for n of 1 or more, k from 0 to n; 0 at k = 0, 1 at k = n.
/// No parts: "not enough data". Source: C. J. Clopper and E. S. Pearson, Biometrika 26 (1934). Checked by F7 and
/// <c>IntervalAndTestProperties</c>.
/// </remarks>
public static class ClopperPearsonInterval
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

        double tail = (1 - confidence) / 2;
        int failures = trials - successes;
        double lower = successes == 0 ? 0 : BetaDistribution.Quantile(successes, failures + 1, tail);
        // The upper end for k is one minus the lower end for n - k; a quantile near 1 would lose digits.
        double upper = failures == 0 ? 1 : 1 - BetaDistribution.Quantile(failures, successes + 1, tail);
        return new Interval(lower, upper, confidence);
    }
}
