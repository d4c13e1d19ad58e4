namespace Traceability.Domain.Quality.Comparisons;

/// <summary>The answer of <see cref="FisherExact"/>.</summary>
/// <param name="P">Two-sided p: the sum over all tables no more probable than the one seen.</param>
/// <param name="PFewerHere">One-sided p for as few failures here, or fewer.</param>
/// <param name="PMoreHere">One-sided p for as many failures here, or more.</param>
/// <param name="OddsRatio">The conditional maximum-likelihood odds ratio: 0 when no failure could be fewer here, infinite when none could
/// be more.</param>
/// <param name="OddsRatioInterval">The exact conditional interval of the odds ratio; an end may be 0 or infinite.</param>
public sealed record FisherExactResult(double P, double PFewerHere, double PMoreHere, double OddsRatio, Interval OddsRatioInterval);
