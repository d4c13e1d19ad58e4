namespace Traceability.Domain.Records;

/// <summary>
/// A revision of a unit's birth certificate as it was issued: the document (JSON) and the PDF by their SHA-256 (lower-case hex);
/// the bytes are stored beside this fact and never regenerated. <c>PublicId</c> is what the QR code leads to.
/// </summary>
public sealed record Certificate(
    Guid Id,
    Guid PartId,
    int Revision,
    string PublicId,
    string DocumentSha256,
    string PdfSha256,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>A unit came back with a complaint.</summary>
public sealed record UnitReturn(
    Guid Id,
    Guid PartId,
    string Complaint,
    string? CustomerReference,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>What was found on a returned unit.</summary>
public sealed record ReturnFinding(
    Guid Id,
    Guid PartId,
    Guid ReturnId,
    string Code,
    string Description,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>How a return may come out.</summary>
public enum ReturnOutcomeKind
{
    /// <summary>The fault was found and mended.</summary>
    Repaired,

    /// <summary>No fault was found.</summary>
    NoFault,

    /// <summary>The unit was scrapped.</summary>
    Scrapped,

    /// <summary>It goes back as it came, at the customer's wish.</summary>
    Unrepaired,
}

/// <summary>How a return came out. While the return is open another may take its place; the latest counts.</summary>
public sealed record ReturnOutcome(
    Guid Id,
    Guid PartId,
    Guid ReturnId,
    ReturnOutcomeKind Kind,
    string Reason,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>A return was brought to an end: what was done.</summary>
public sealed record ReturnClosing(
    Guid Id,
    Guid PartId,
    Guid ReturnId,
    string Action,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);
