namespace Traceability.Domain.Quality.Comparisons;

/// <summary>A group of values by its size, mean and variance, for callers that cannot hand every value over.</summary>
/// <param name="Size">n, 1 or more.</param>
/// <param name="Mean">The mean.</param>
/// <param name="Variance">s^2 with n - 1; 0 for a single value.</param>
public readonly record struct GroupSummary(int Size, double Mean, double Variance);
