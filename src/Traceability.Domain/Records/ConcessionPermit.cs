namespace Traceability.Domain.Records;

/// <summary>
/// Permission given beforehand to use parts that do not conform in one stated way: those of a lot, those with a code of nonconformity, or
/// those that fail a stage. It is limited to a number of parts, to a last day, or to both. Concessions on single parts are then counted
/// against it.
/// </summary>
public sealed record ConcessionPermit(
    Guid Id,
    string Number,
    Guid? LotId,
    string? Code,
    string? Stage,
    int? MostParts,
    DateOnly? ValidUntil,
    string Reason,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);
