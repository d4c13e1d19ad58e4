using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.Outliers;

/// <summary>
/// A spread that outliers cannot inflate: MAD = 1.4826 median |x - median|, which estimates the standard deviation of normal values.
/// </summary>
/// <remarks>
/// Needs 1 value, otherwise "not enough data"; 0 when more than half the values are equal. Source: F. R. Hampel, JASA 69 (1974); as R's
/// mad. Checked by F17-011.
/// </remarks>
public static class MedianDeviation
{
    /// <summary>1/z_0.75 to the digits that are customary.</summary>
    public const double NormalScale = 1.4826;

    /// <summary>The scaled median absolute deviation.</summary>
    /// <param name="values">The values in any order.</param>
    public static Computed<double> Of(IReadOnlyList<double> values)
    {
        if (values.Count == 0)
        {
            return new NotEnoughData("values", 1, 0);
        }

        double median = Sample.Median(values);
        return NormalScale * Sample.Median([.. values.Select(x => Math.Abs(x - median))]);
    }
}
