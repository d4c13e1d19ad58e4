namespace Traceability.Domain.Quality.GaugeStudy;

/// <summary>One line of an analysis of variance.</summary>
/// <param name="SumOfSquares">SS.</param>
/// <param name="DegreesOfFreedom">df, 1 or more.</param>
public readonly record struct VarianceSource(double SumOfSquares, int DegreesOfFreedom)
{
    /// <summary>MS = SS/df.</summary>
    public double MeanSquare => SumOfSquares / DegreesOfFreedom;
}
