namespace Traceability.Domain.Quality.Comparisons;

/// <summary>A chi-square statistic and its p.</summary>
/// <param name="Statistic">Chi-square, 0 or more.</param>
/// <param name="DegreesOfFreedom">nu.</param>
/// <param name="P">The probability of as much or more by chance.</param>
public sealed record ChiSquareResult(double Statistic, int DegreesOfFreedom, double P);

/// <summary>A variance ratio and its p.</summary>
/// <param name="Statistic">F, 0 or more.</param>
/// <param name="NumeratorDf">nu1.</param>
/// <param name="DenominatorDf">nu2, not always whole.</param>
/// <param name="P">The probability of as much or more by chance.</param>
public sealed record VarianceRatioResult(double Statistic, double NumeratorDf, double DenominatorDf, double P);

/// <summary>A comparison of two means.</summary>
/// <param name="Statistic">t.</param>
/// <param name="DegreesOfFreedom">nu, not always whole.</param>
/// <param name="P">Two-sided p.</param>
/// <param name="Difference">First mean minus second, in the unit of the values.</param>
/// <param name="DifferenceInterval">Its confidence interval.</param>
public sealed record MeanDifferenceResult(
    double Statistic,
    double DegreesOfFreedom,
    double P,
    double Difference,
    Interval DifferenceInterval
);
