namespace Traceability.Domain.Records;

/// <summary>
/// One execution of a stage on a part: opened at a station by a builder. Numbers count from 1 per part and stage.
/// An attempt that belongs to a load shares its run with other parts.
/// </summary>
public sealed record Attempt(
    Guid Id,
    Guid PartId,
    string Stage,
    int Number,
    string Station,
    Guid? LoadId,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>An instrument was used in an attempt; the calibration in force at that moment goes with it.</summary>
public sealed record InstrumentUse(
    Guid Id,
    Guid PartId,
    Guid AttemptId,
    Guid InstrumentId,
    string InstrumentCode,
    string InstrumentKind,
    Guid? CalibrationId,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>What a stage's method found.</summary>
public enum Verdict
{
    /// <summary>Every requirement is met.</summary>
    Pass,

    /// <summary>At least one requirement is not met.</summary>
    Fail,

    /// <summary>Nothing is outside its limits, but a value lies too near to one to be shown to conform; the quality lead decides.</summary>
    Conditional,
}

/// <summary>
/// An attempt came to its end: closed with a verdict by the stage's method (its name and version are kept),
/// or abandoned, in which case <c>Verdict</c> is null and <c>Note</c> holds the reason. <c>FailedByFinding</c> is true when something
/// other than a reading outside its limits failed it, so that correcting a reading cannot turn the verdict.
/// </summary>
public sealed record AttemptEnding(
    Guid Id,
    Guid PartId,
    Guid AttemptId,
    Verdict? Verdict,
    string? Note,
    string? Method,
    int? MethodVersion,
    string[] Findings,
    bool FailedByFinding,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt)
{
    /// <summary>
    /// The moment from which waits and windows of later stages count, as the method read it from the log that judged the stage; null where
    /// they count from the ending itself.
    /// </summary>
    public DateTimeOffset? CountsFrom { get; init; }

    /// <summary>True when the attempt was abandoned before a verdict.</summary>
    public bool Abandoned => Verdict is null;
}

/// <summary>Parts that cure or soak together: one start, one log, one end; each part has its own attempt and verdict.</summary>
public sealed record Load(
    Guid Id,
    string Stage,
    string Station,
    string[] Instruments,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);
