using Traceability.Domain.Quality.Charts;

namespace Traceability.Domain.Quality.GaugeStudy;

/// <summary>
/// The factors of the average-and-range method: K1 = 1/d2(r) for many ranges; K2 = 1/d2*(k) and K3 = 1/d2*(n) for a single range, where
/// d2* = sqrt(d2^2 + d3^2).
/// </summary>
/// <remarks>
/// Valid for 2 to 100 trials, appraisers and parts. Manuals print four digits (0.5908, 0.5231, 0.3146 for 3 trials, 3 appraisers, 10
/// parts): hand those in to repeat a printed calculation. Source: A. J. Duncan, Quality Control and Industrial Statistics, table of d2*.
/// Checked by F14-011 and <c>GaugeStudyTests</c>.
/// </remarks>
/// <param name="K1">For repeatability, by the number of trials.</param>
/// <param name="K2">For reproducibility, by the number of appraisers.</param>
/// <param name="K3">For part variation, by the number of parts.</param>
public readonly record struct AverageRangeFactors(double K1, double K2, double K3)
{
    /// <summary>The factors for a study.</summary>
    /// <param name="trials">r.</param>
    /// <param name="appraisers">k.</param>
    /// <param name="parts">n.</param>
    public static AverageRangeFactors For(int trials, int appraisers, int parts) =>
        new(1 / ControlChartConstants.For(trials).MeanRange, ForOneRange(appraisers), ForOneRange(parts));

    private static double ForOneRange(int size)
    {
        ControlChartConstants c = ControlChartConstants.For(size);
        return 1 / Math.Sqrt(c.MeanRange * c.MeanRange + c.RangeDeviation * c.RangeDeviation);
    }
}
