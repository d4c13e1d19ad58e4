using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.Charts;

/// <summary>
/// Subgroup means with ranges or standard deviations (X-bar/R and X-bar/s): several readings that belong together, such as one load.
/// </summary>
/// <remarks>
/// By ranges: means X -+ A2 R, ranges D3 R .. D4 R, sigma = R/d2. By deviations: means X -+ A3 s, deviations B3 s .. B4 s, sigma = s/c4;
/// X, R and s are the averages over the subgroups, all of the same size n from 2 to 100. Needs 2 subgroups, otherwise "not enough data".
/// Source: NIST e-Handbook 6.3.2.1. Checked by F3.
/// </remarks>
/// <param name="SubgroupSize">n.</param>
/// <param name="Means">The mean of each subgroup.</param>
/// <param name="Ranges">The range of each subgroup.</param>
/// <param name="Deviations">The standard deviation of each subgroup.</param>
/// <param name="MeansByRange">Limits of the means from the mean range.</param>
/// <param name="RangeLimits">Limits of the ranges.</param>
/// <param name="MeansByDeviation">Limits of the means from the mean standard deviation.</param>
/// <param name="DeviationLimits">Limits of the standard deviations.</param>
public sealed record SubgroupChart(
    int SubgroupSize,
    IReadOnlyList<double> Means,
    IReadOnlyList<double> Ranges,
    IReadOnlyList<double> Deviations,
    ChartLimits MeansByRange,
    ChartLimits RangeLimits,
    ChartLimits MeansByDeviation,
    ChartLimits DeviationLimits
)
{
    /// <summary>The spread inside subgroups by ranges, R/d2.</summary>
    public double SigmaByRange => RangeLimits.Centre / ControlChartConstants.For(SubgroupSize).MeanRange;

    /// <summary>The spread inside subgroups by standard deviations, s/c4.</summary>
    public double SigmaByDeviation => DeviationLimits.Centre / ControlChartConstants.For(SubgroupSize).MeanDeviation;

    /// <summary>The positions (from 0) of subgroups whose mean lies beyond its limits (X-bar/R).</summary>
    public IReadOnlyList<int> MeansBeyondLimits => [.. Enumerable.Range(0, Means.Count).Where(i => MeansByRange.IsBeyond(Means[i]))];

    /// <summary>
    /// The positions (from 0) of subgroups whose range lies beyond its limits: look at these first, their means cannot be judged.
    /// </summary>
    public IReadOnlyList<int> RangesBeyondLimits => [.. Enumerable.Range(0, Ranges.Count).Where(i => RangeLimits.IsBeyond(Ranges[i]))];

    /// <summary>
    /// Each mean as a distance from the centre line in standard errors, for <see cref="NelsonRules"/>; 0 when nothing varies.
    /// </summary>
    public IReadOnlyList<double> StandardisedMeans
    {
        get
        {
            double error = SigmaByRange / Math.Sqrt(SubgroupSize);
            return [.. Means.Select(m => error == 0 ? 0 : (m - MeansByRange.Centre) / error)];
        }
    }

    /// <summary>Draws up the chart.</summary>
    /// <param name="subgroups">The values of each subgroup, all of the same size.</param>
    /// <exception cref="ArgumentException">The subgroups are not all of the same size.</exception>
    public static Computed<SubgroupChart> Of(IReadOnlyList<IReadOnlyList<double>> subgroups)
    {
        if (subgroups.Count < 2)
        {
            return new NotEnoughData("subgroups", 2, subgroups.Count);
        }

        int n = subgroups[0].Count;
        if (subgroups.Any(g => g.Count != n))
        {
            throw new ArgumentException("Subgroups must all be of the same size.", nameof(subgroups));
        }

        if (n < 2)
        {
            return new NotEnoughData("values in each subgroup", 2, n);
        }

        ControlChartConstants constants = ControlChartConstants.For(n);
        double[] means = [.. subgroups.Select(Sample.Mean)],
            ranges = [.. subgroups.Select(Sample.Range)];
        double[] deviations = [.. subgroups.Select(Sample.StandardDeviation)];
        double mean = Sample.Mean(means),
            range = Sample.Mean(ranges),
            deviation = Sample.Mean(deviations);
        return new SubgroupChart(
            n,
            means,
            ranges,
            deviations,
            Around(mean, constants.MeansByRange * range),
            new ChartLimits(constants.RangeLower * range, range, constants.RangeUpper * range),
            Around(mean, constants.MeansByDeviation * deviation),
            new ChartLimits(constants.DeviationLower * deviation, deviation, constants.DeviationUpper * deviation)
        );
    }

    /// <summary>Cuts a run of values into full subgroups of consecutive values; an unfinished last one is left out.</summary>
    /// <param name="values">The values in the order made.</param>
    /// <param name="subgroupSize">n, 2 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">n is below 2.</exception>
    public static IReadOnlyList<IReadOnlyList<double>> Consecutive(IReadOnlyList<double> values, int subgroupSize)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(subgroupSize, 2);
        return [.. values.Chunk(subgroupSize).Where(chunk => chunk.Length == subgroupSize)];
    }

    private static ChartLimits Around(double centre, double half) => new(centre - half, centre, centre + half);
}
