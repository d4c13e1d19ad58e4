using Traceability.Domain.Quality.Distributions;

namespace Traceability.Domain.Quality.Trends;

/// <summary>The answer of <see cref="LinearRegression"/>.</summary>
/// <param name="Coefficients">B0 (the value where every predictor is 0), then one slope per predictor.</param>
/// <param name="StandardErrors">The standard error of each coefficient.</param>
/// <param name="ResidualStandardDeviation">s = sqrt(residual sum of squares / (n - p)).</param>
/// <param name="RSquared">The share of the variation explained, 0 to 1.</param>
/// <param name="DegreesOfFreedom">n - p, with p coefficients.</param>
public sealed record LinearRegressionResult(
    IReadOnlyList<double> Coefficients,
    IReadOnlyList<double> StandardErrors,
    double ResidualStandardDeviation,
    double RSquared,
    int DegreesOfFreedom
)
{
    /// <summary>Two-sided p that a coefficient is 0 but for chance.</summary>
    /// <param name="index">0 for B0, 1 for the first slope.</param>
    public double P(int index) =>
        (Coefficients[index], StandardErrors[index]) switch
        {
            (0, _) => 1,
            (_, 0) => 0,
            var (b, se) => StudentDistribution.OutsideBothSides(b / se, DegreesOfFreedom),
        };

    /// <summary>The confidence interval of a coefficient.</summary>
    /// <param name="index">0 for B0, 1 for the first slope.</param>
    /// <param name="confidence">The confidence level, between 0 and 1.</param>
    public Interval IntervalOf(int index, double confidence = Interval.UsualConfidence)
    {
        double half = StudentDistribution.TwoSidedQuantile(confidence, DegreesOfFreedom) * StandardErrors[index];
        return new Interval(Coefficients[index] - half, Coefficients[index] + half, confidence);
    }
}
