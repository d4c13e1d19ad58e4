namespace Traceability.Domain.Records;

/// <summary>
/// A requirement was not met (ISO 9000:2015, 3.6.9): raised by a failed attempt, by a correction that turned a verdict, or by hand.
/// </summary>
public sealed record Nonconformity(
    Guid Id,
    Guid PartId,
    Guid? AttemptId,
    string? Stage,
    string Code,
    string Description,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>What may be decided about a nonconformity; words of ISO 9000:2015, 3.12.</summary>
public enum DispositionKind
{
    /// <summary>Make it conform: go back to a stage and do it and all later ones again.</summary>
    Rework,

    /// <summary>Make it usable: the failed stage is done again after a repair.</summary>
    Repair,

    /// <summary>Permission to use it although it does not conform.</summary>
    Concession,

    /// <summary>It conforms to other requirements and goes on under another grade.</summary>
    Regrade,

    /// <summary>It is not used at all.</summary>
    Scrap,
}

/// <summary>
/// The decision on a nonconformity. <c>ReturnTo</c> names the stage for rework and repair; <c>LimitedTo</c> the limit of a concession or
/// the new grade.
/// </summary>
public sealed record Disposition(
    Guid Id,
    Guid PartId,
    Guid NonconformityId,
    DispositionKind Kind,
    string? ReturnTo,
    string? LimitedTo,
    string Reason,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt)
{
    /// <summary>
    /// The permit on which a concession rests, and against whose limit it counts; null for a concession on this part alone.
    /// </summary>
    public Guid? PermitId { get; init; }
}

/// <summary>A stop put on a lot, a part or an instrument, and on everything that contains it, until it is released.</summary>
public sealed record Hold(
    Guid Id,
    Guid? LotId,
    Guid? PartId,
    Guid? InstrumentId,
    string Reason,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt)
{
    /// <summary>The id of what is held.</summary>
    public Guid SubjectId => LotId ?? PartId ?? InstrumentId ?? throw new InvalidOperationException($"Hold {Id} names no subject.");
}

/// <summary>A hold was lifted, with the reason.</summary>
public sealed record HoldRelease(Guid Id, Guid HoldId, string Reason, Guid By, DateTimeOffset OccurredAt, DateTimeOffset RecordedAt)
    : Fact(Id, By, OccurredAt, RecordedAt);
