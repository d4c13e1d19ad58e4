namespace Traceability.Domain.Quality.FilmLots;

/// <summary>How far the film of a lot got.</summary>
/// <param name="Lot">The film lot.</param>
/// <param name="Kind">A kind of part that holds film of the lot or held it.</param>
/// <param name="Parts">How many of that kind, each counted once.</param>
/// <param name="Shipped">Those that left the workshop with it inside.</param>
/// <param name="Returned">Those that came back with it inside.</param>
public sealed record LotReach(string Lot, string Kind, int Parts, int Shipped, int Returned);
