using Traceability.Domain.Quality.Distributions;
using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.Charts;

/// <summary>
/// Individual values and moving ranges: one reading per part, in the order made.
/// </summary>
/// <remarks>
/// MR_i = |x_i - x_{i-1}|, sigma = mean MR / d2 with d2 = 2/sqrt(pi) = 1.128379; individuals: mean -+ 3 sigma; moving ranges: 0 .. D4 mean
/// MR with D4 = 3.2665. Needs 2 values, otherwise "not enough data"; with equal values the limits fall on the centre line.
/// Limits are wider the more the values swing; a trend or strong autocorrelation makes them misleading.
/// Source: NIST e-Handbook 6.3.2.2. Checked by F2.
/// </remarks>
/// <param name="Values">The values in the order made.</param>
/// <param name="MovingRanges">The n - 1 moving ranges.</param>
/// <param name="Sigma">The short-term standard deviation by the mean moving range.</param>
/// <param name="Individuals">Mean and limits of the values.</param>
/// <param name="Ranges">Mean and limits of the moving ranges.</param>
public sealed record IndividualsChart(
    IReadOnlyList<double> Values,
    IReadOnlyList<double> MovingRanges,
    double Sigma,
    ChartLimits Individuals,
    ChartLimits Ranges
)
{
    /// <summary>
    /// The short-term standard deviation by the median moving range, which a few jumps do not widen: median MR / (sqrt 2 z_0.75), divisor
    /// 0.953873.
    /// </summary>
    public double SigmaByMedian => Sample.Median(MovingRanges) / (Math.Sqrt(2) * NormalDistribution.Quantile(0.75));

    /// <summary>
    /// Each value as a distance from the centre line in sigmas, for <see cref="NelsonRules"/>; 0 throughout when nothing varies.
    /// </summary>
    public IReadOnlyList<double> Standardised => [.. Values.Select(x => Sigma == 0 ? 0 : (x - Individuals.Centre) / Sigma)];

    /// <summary>
    /// The patterns that <see cref="NelsonRules"/> finds; none where nothing varies, for there is no sigma to measure by.
    /// </summary>
    public IReadOnlyList<RuleBreak> RuleBreaks => Sigma == 0 ? [] : NelsonRules.Check(Standardised);

    /// <summary>Draws up the chart.</summary>
    /// <param name="values">The values in the order made.</param>
    /// <param name="meanRangeConstant">
    /// d2 of two values; the exact one unless given. Hand 1.128 in to repeat a calculation printed with the rounded constant.
    /// </param>
    public static Computed<IndividualsChart> Of(IReadOnlyList<double> values, double? meanRangeConstant = null)
    {
        Sample.RequireFinite(values);
        if (values.Count < 2)
        {
            return new NotEnoughData("values", 2, values.Count);
        }

        var ranges = new double[values.Count - 1];
        for (int i = 1; i < values.Count; i++)
        {
            ranges[i - 1] = Math.Abs(values[i] - values[i - 1]);
        }

        ControlChartConstants pair = ControlChartConstants.For(2);
        double mean = Sample.Mean(values),
            meanRange = Sample.Mean(ranges),
            sigma = meanRange / (meanRangeConstant ?? pair.MeanRange);
        return new IndividualsChart(
            values,
            ranges,
            sigma,
            new ChartLimits(mean - 3 * sigma, mean, mean + 3 * sigma),
            new ChartLimits(0, meanRange, pair.RangeUpper * meanRange)
        );
    }
}
