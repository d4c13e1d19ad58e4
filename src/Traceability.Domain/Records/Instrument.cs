namespace Traceability.Domain.Records;

/// <summary>
/// A measuring instrument or cabinet. When <c>CheckNominal</c> is set, it is proved against a reference of that value
/// (a reference resistor, a reference microphone) and the reading may differ by <c>CheckTolerance</c> at most.
/// </summary>
public sealed record Instrument(
    Guid Id, string Code, string Kind, string Title, decimal? CheckNominal, decimal? CheckTolerance, string? CheckUnit,
    Guid By, DateTimeOffset OccurredAt, DateTimeOffset RecordedAt) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>An instrument was calibrated. A failed calibration means that it was found out of tolerance.</summary>
public sealed record Calibration(
    Guid Id, Guid InstrumentId, DateOnly CalibratedOn, DateOnly DueOn, string Reference, bool Passed, string? Note,
    Guid By, DateTimeOffset OccurredAt, DateTimeOffset RecordedAt) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>An instrument was proved against its reference on the day.</summary>
public sealed record InstrumentCheck(
    Guid Id, Guid InstrumentId, decimal? Nominal, decimal? Value, bool Passed, string? Note,
    Guid By, DateTimeOffset OccurredAt, DateTimeOffset RecordedAt) : Fact(Id, By, OccurredAt, RecordedAt);
