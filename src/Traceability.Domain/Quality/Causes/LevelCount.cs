namespace Traceability.Domain.Quality.Causes;

/// <summary>How many parts of one level failed; the database may count these itself.</summary>
/// <param name="Factor">The factor.</param>
/// <param name="Level">The level.</param>
/// <param name="Failed">Failed parts, 0 or more.</param>
/// <param name="Total">All parts, failed or not.</param>
public readonly record struct LevelCount(string Factor, string Level, int Failed, int Total);
