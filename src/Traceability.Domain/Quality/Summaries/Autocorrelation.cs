namespace Traceability.Domain.Quality.Summaries;

/// <summary>
/// How much each value resembles the one before: r1 = Sum (x_t - m)(x_{t+1} - m) / Sum (x_t - m)^2.
/// </summary>
/// <remarks>
/// From -1 to 1. A strongly positive r1 makes limits from moving ranges too narrow. Needs 3 values that are not all equal.
/// Source: NIST e-Handbook 1.3.5.12. Checked by F0-003 (NIST StRD).
/// </remarks>
public static class Autocorrelation
{
    /// <summary>The lag-one autocorrelation.</summary>
    /// <param name="values">The values in time order.</param>
    public static Computed<double> LagOne(IReadOnlyList<double> values)
    {
        if (values.Count < 3)
        {
            return new NotEnoughData("values", 3, values.Count);
        }

        double mean = Sample.Mean(values),
            squares = Sample.SumOfSquares(values),
            products = 0;
        if (squares == 0)
        {
            return new NotEnoughData("different values", 2, 1);
        }

        for (int i = 1; i < values.Count; i++)
        {
            products += (values[i - 1] - mean) * (values[i] - mean);
        }

        return products / squares;
    }
}
