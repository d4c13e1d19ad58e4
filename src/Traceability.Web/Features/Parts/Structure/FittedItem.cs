namespace Traceability.Web.Features.Parts.Structure;

/// <summary>Something fitted at a position: a part (with what is inside it) or some of a lot; present, or removed and when.</summary>
/// <param name="Position" example="front-diaphragm">The position.</param>
/// <param name="Kind" example="diaphragm">The kind of part or of lot.</param>
/// <param name="Serial" example="DD26-00417">The serial, of a part.</param>
/// <param name="Lot" example="FL-2611">The number, of a lot.</param>
/// <param name="Model" example="TARN-2">The model, of a part.</param>
/// <param name="Supplier" example="Hollin Films (invented)">The supplier, of a lot.</param>
/// <param name="SupplierLot" example="HF-88213">The supplier's own number, of a lot.</param>
/// <param name="Quantity" example="2.5">How much of the lot, in the lot's unit, where it was said.</param>
/// <param name="Present" example="true">Whether it is still there, or was at the time asked for.</param>
/// <param name="FittedAt" example="2026-11-25T08:05:00Z">When it was fitted.</param>
/// <param name="RemovedAt" example="2026-11-26T09:30:00Z">When it was taken out.</param>
/// <param name="RemovedBecause" example="scratched in handling">Why it was taken out.</param>
/// <param name="Inside">What is fitted in it, of a part.</param>
public sealed record FittedItem(
    string Position,
    string Kind,
    string? Serial,
    string? Lot,
    string? Model,
    string? Supplier,
    string? SupplierLot,
    decimal? Quantity,
    bool Present,
    DateTimeOffset FittedAt,
    DateTimeOffset? RemovedAt,
    string? RemovedBecause,
    IReadOnlyList<FittedItem> Inside
);
