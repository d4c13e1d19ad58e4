namespace Traceability.Domain.Quality.Comparisons;

/// <summary>The answer of <see cref="OneWayAnova"/>.</summary>
/// <param name="SumOfSquaresBetween">Sum n_i (m_i - m)^2.</param>
/// <param name="SumOfSquaresWithin">Sum (x - m_i)^2.</param>
/// <param name="Test">F with its degrees of freedom and p.</param>
public sealed record OneWayAnovaResult(double SumOfSquaresBetween, double SumOfSquaresWithin, VarianceRatioResult Test)
{
    /// <summary>Mean square within, the pooled variance.</summary>
    public double MeanSquareWithin => SumOfSquaresWithin / Test.DenominatorDf;

    /// <summary>The pooled standard deviation.</summary>
    public double ResidualStandardDeviation => Math.Sqrt(MeanSquareWithin);

    /// <summary>
    /// Eta squared: the share of the total variation that lies between the groups (R squared), 0 to 1; flatters small samples.
    /// </summary>
    public double EtaSquared => SumOfSquaresBetween / (SumOfSquaresBetween + SumOfSquaresWithin);

    /// <summary>
    /// Omega squared, eta squared without its bias: (SSB - dfB MSW) / (SST + MSW); 0 where that would be negative.
    /// </summary>
    public double OmegaSquared =>
        Math.Max(
            0,
            (SumOfSquaresBetween - Test.NumeratorDf * MeanSquareWithin) / (SumOfSquaresBetween + SumOfSquaresWithin + MeanSquareWithin)
        );
}
