using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.Charts;

/// <summary>
/// Exponentially weighted moving average: sees a small lasting shift that single values hide.
/// </summary>
/// <remarks>
/// z_t = lambda x_t + (1 - lambda) z_{t-1}, z_0 = target; limits target -+ L sigma sqrt(lambda/(2 - lambda) [1 - (1 - lambda)^{2t}]).
/// Valid for lambda above 0 and up to 1 (1 is the plain chart of individuals), sigma of 0 or more, L above 0; others throw. No values:
/// empty chart. Source: NIST e-Handbook 6.3.2.4. Checked by F4.
/// </remarks>
/// <param name="Averages">z_1 .. z_n.</param>
/// <param name="Limits">The limits at each point, widening towards <paramref name="FinalLimits"/>.</param>
/// <param name="FinalLimits">The limits after many points.</param>
public sealed record EwmaChart(IReadOnlyList<double> Averages, IReadOnlyList<ChartLimits> Limits, ChartLimits FinalLimits)
{
    /// <summary>The positions (from 0) of averages beyond their limits.</summary>
    public IReadOnlyList<int> BeyondLimits => [.. Enumerable.Range(0, Averages.Count).Where(i => Limits[i].IsBeyond(Averages[i]))];

    /// <summary>Draws up the chart.</summary>
    /// <param name="values">The values in the order made.</param>
    /// <param name="target">Where the process should be, and where the average starts.</param>
    /// <param name="sigma">The standard deviation of single values.</param>
    /// <param name="lambda">The weight of the newest value, 0.2 to 0.3 as a rule.</param>
    /// <param name="width">L, the half width of the limits in standard deviations of the average.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// <paramref name="sigma"/> is negative, <paramref name="width"/> is not above 0, or the weight is not above 0 and at most 1.
    /// </exception>
    public static EwmaChart Of(IReadOnlyList<double> values, double target, double sigma, double lambda = 0.2, double width = 3)
    {
        Sample.RequireFinite([.. values, target, sigma]);
        ArgumentOutOfRangeException.ThrowIfNegative(sigma);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(width);
        if (lambda is not (> 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(lambda), lambda, "The weight of the newest value lies above 0 and at most at 1.");
        }

        var averages = new double[values.Count];
        var limits = new ChartLimits[values.Count];
        double average = target,
            final = width * sigma * Math.Sqrt(lambda / (2 - lambda)),
            faded = 1;
        for (int i = 0; i < values.Count; i++)
        {
            averages[i] = average = lambda * values[i] + (1 - lambda) * average;
            faded *= (1 - lambda) * (1 - lambda);
            limits[i] = Around(final * Math.Sqrt(1 - faded));
        }

        return new EwmaChart(averages, limits, Around(final));

        ChartLimits Around(double half) => new(target - half, target, target + half);
    }
}
