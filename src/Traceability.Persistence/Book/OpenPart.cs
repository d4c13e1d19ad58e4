using Traceability.Domain.Gates;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Book;

/// <summary>A part whose row is locked until the transaction ends: what is decided about it now cannot be overtaken.</summary>
public sealed class OpenPart(Dossier dossier, LedgerHead head, PartStanding standing)
{
    /// <summary>The part's facts, including those appended in this transaction.</summary>
    public Dossier Dossier { get; internal set; } = dossier;

    internal LedgerHead Head { get; } = head;

    internal PartStanding Standing { get; } = standing;
}
