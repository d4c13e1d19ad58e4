using Traceability.Domain.Records;

namespace Traceability.Domain.Stages.Methods;

/// <summary>Something fitted in the part, as far as a method may look at it.</summary>
/// <param name="Position">The position of the slot that it is fitted in.</param>
public abstract record FittedThing(string Position);

/// <summary>A fitted part.</summary>
/// <param name="Position">The position of the slot that it is fitted in.</param>
/// <param name="Values">
/// Its counting readings by characteristic, in the units of its route; only those that the method says it reads.
/// </param>
/// <param name="FilmLotId">The film lot that it is made of; null when it has none.</param>
public sealed record FittedPart(string Position, IReadOnlyDictionary<string, decimal> Values, Guid? FilmLotId) : FittedThing(Position);

/// <summary>A fitted lot.</summary>
/// <param name="Position">The position of the slot that it is fitted in.</param>
/// <param name="Lot">The lot.</param>
public sealed record FittedLot(string Position, Lot Lot) : FittedThing(Position);
