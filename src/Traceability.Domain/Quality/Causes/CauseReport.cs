namespace Traceability.Domain.Quality.Causes;

/// <summary>The ranked answer to "what do the failures have in common?".</summary>
/// <param name="Associations">The strongest associations first, at most as many as asked for.</param>
/// <param name="LevelsCompared">How many levels were compared and adjusted for.</param>
/// <param name="LevelsTooSmall">How many levels had too few parts to be compared.</param>
/// <param name="Parts">How many parts were looked at.</param>
/// <param name="Failed">How many of them failed.</param>
public sealed record CauseReport(
    IReadOnlyList<CauseAssociation> Associations,
    int LevelsCompared,
    int LevelsTooSmall,
    int Parts,
    int Failed
);
