namespace Traceability.Domain.Gates;

/// <summary>
/// Where a part sits: the carrier that stands for it, the part it is fitted in, and what is wrong with things inside it.
/// </summary>
public sealed record PartPlacement(string? CarrierCode, string? FittedInSerial, IReadOnlyList<InsideProblem> Inside)
{
    /// <summary>A free part with nothing wrong inside.</summary>
    public static readonly PartPlacement None = new(null, null, []);

    /// <summary>The outermost part around it; null when it is in nothing.</summary>
    public Container? Outermost { get; init; }

    /// <summary>Of a film lot, which is a part and a lot: the hold or quarantine of the lot itself.</summary>
    public IReadOnlyList<InsideProblem> OnItself { get; init; } = [];

    /// <summary>What was measured on the part, or on anything inside it, with an instrument in doubt, and nobody has decided on.</summary>
    public IReadOnlyList<InDoubt> InDoubt { get; init; } = [];
}

/// <summary>The outermost part around another, and how it left use or the house.</summary>
public sealed record Container(string Serial, Exit Exit);

/// <summary>A lot or part inside that stops the part around it.</summary>
public sealed record InsideProblem(InsideProblemKind Kind, string Subject, string Reason);

/// <summary>What can be wrong with something inside a part.</summary>
public enum InsideProblemKind
{
    /// <summary>A hold on a lot or part inside.</summary>
    Hold,

    /// <summary>A lot inside is (again) in quarantine.</summary>
    Quarantine,

    /// <summary>A fitted part has an open nonconformity.</summary>
    Nonconformity,
}
