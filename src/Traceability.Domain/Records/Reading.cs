namespace Traceability.Domain.Records;

/// <summary>Where a reading came from.</summary>
public enum ReadingSource
{
    /// <summary>Typed or scanned by a person.</summary>
    Entered,

    /// <summary>Sent by an instrument under its own token.</summary>
    Instrument,

    /// <summary>Computed by the stage's method from other readings or from evidence.</summary>
    Computed,
}

/// <summary>
/// One measured, entered or computed value. <c>Digits</c> keeps what was entered to the last zero; the limits are those of the
/// route revision that judged it. A computed reading names the method, its version and, where there is one, the evidence.
/// </summary>
public sealed record Reading(
    Guid Id,
    Guid PartId,
    Guid AttemptId,
    string Characteristic,
    decimal Value,
    string Digits,
    string Unit,
    decimal? Nominal,
    decimal? Lower,
    decimal? Upper,
    bool Met,
    ReadingSource Source,
    string? Method,
    int? MethodVersion,
    Guid? EvidenceId,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt)
{
    /// <summary>U of the value with coverage factor 2, as the route stated it; null when it stated none.</summary>
    public decimal? ExpandedUncertainty { get; init; }

    /// <summary>True when it was judged by guarded acceptance; null stands for false.</summary>
    public bool? Guarded { get; init; }
}

/// <summary>A reading was found wrong and superseded; both stay visible with who, when and why.</summary>
public sealed record Correction(
    Guid Id,
    Guid PartId,
    Guid ReadingId,
    decimal Value,
    string Digits,
    bool Met,
    string Reason,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>
/// A file kept byte for byte: a logger's CSV, a response, a recording, a photo. The bytes are stored beside this fact and are
/// found by <c>Sha256</c> (lower-case hex). <c>AttemptId</c> is null for the log of a load.
/// </summary>
public sealed record EvidenceRecord(
    Guid Id,
    Guid? PartId,
    Guid? AttemptId,
    Guid? LoadId,
    string Name,
    string Kind,
    string MediaType,
    string Sha256,
    long LengthBytes,
    decimal? FullScaleV,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);
