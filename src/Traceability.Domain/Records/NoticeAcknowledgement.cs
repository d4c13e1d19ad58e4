namespace Traceability.Domain.Records;

/// <summary>
/// The quality lead has seen a notice of the desk. Notices are derived when they are looked at; this keeps one from being raised twice. It
/// names what broke: Nelson's <c>Rule</c> on the chart of a characteristic, with the reading of the last point that broke it, or a
/// <c>FilmLot</c>. <c>Points</c> is how many points broke the rule, or how many diaphragms of the lot had failed. <c>KnownUntil</c> is the
/// latest moment at which a point of the chart, or a failure of the lot, had become known: only what becomes known later raises it again.
/// <c>Note</c> says what was found, if anything.
/// </summary>
public sealed record NoticeAcknowledgement(
    Guid Id,
    string Key,
    string? Kind,
    string? Model,
    string? Stage,
    string? Characteristic,
    int? Rule,
    string? FilmLot,
    Guid? ReadingId,
    DateTimeOffset KnownUntil,
    int Points,
    string? Note,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);
