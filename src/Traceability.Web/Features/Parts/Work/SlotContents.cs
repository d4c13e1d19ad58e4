using Traceability.Domain.Gates;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>What is, or is about to be, in the slots.</summary>
/// <param name="ByPosition">Parts and lots by the position that they are at.</param>
/// <param name="Children">The parts among them that are about to be fitted, locked.</param>
/// <param name="Refusal">Why something that was asked for cannot be fitted, if so.</param>
public sealed record SlotContents(IReadOnlyDictionary<string, Input> ByPosition, IReadOnlyList<OpenPart> Children, Refusal? Refusal);
