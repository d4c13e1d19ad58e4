namespace Traceability.Domain.Quality.FilmLots;

/// <summary>First attempts of the parts of one film lot at one stage.</summary>
/// <param name="Lot">The film lot.</param>
/// <param name="Stage">The stage.</param>
/// <param name="Judged">Parts with a first verdict there, 0 or more.</param>
/// <param name="PassedFirst">Those whose first verdict was a pass.</param>
public readonly record struct LotStageCount(string Lot, string Stage, int Judged, int PassedFirst);
