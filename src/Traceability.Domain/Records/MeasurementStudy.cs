namespace Traceability.Domain.Records;

/// <summary>
/// The design of a gauge repeatability and reproducibility study: which characteristic, with which kind of instrument, on which pieces, by
/// whom, how often each. Its readings say something about the measuring, not about the pieces, and never enter the record of a part.
/// </summary>
public sealed record MeasurementStudy(
    Guid Id,
    string Number,
    string Title,
    string Characteristic,
    string Unit,
    string InstrumentKind,
    string[] Pieces,
    string[] People,
    int Repeats,
    decimal? Lower,
    decimal? Upper,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>
/// One reading of a study: this piece, by this person, for the n-th time. A later reading of the same cell takes the place of the earlier
/// one, which stays to be seen, and says why.
/// </summary>
public sealed record MeasurementStudyReading(
    Guid Id,
    Guid StudyId,
    string Piece,
    string Person,
    int Trial,
    decimal Value,
    string Digits,
    Guid? InstrumentId,
    string? Reason,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);
