using Traceability.Persistence.Queries;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Notices;

/// <summary>
/// A notice that nobody has acknowledged. <c>What</c> is <c>rule-break</c> (with kind, model, stage, characteristic, rule and the last
/// point) or <c>film-lot</c>. <c>Points</c> counts the new points that break the rule, or the diaphragms of the lot that failed.
/// </summary>
public sealed record NoticeRow(
    string Key,
    [property: OneOf("NoticeKind", "rule-break", "film-lot")] string What,
    string? Kind,
    string? Model,
    string? Stage,
    string? StageTitle,
    string? Characteristic,
    string? Label,
    string? Unit,
    int? Rule,
    string? FilmLot,
    int Points,
    string? Serial,
    double? Value,
    DateTimeOffset LastAt,
    DateTimeOffset? ChartFrom,
    int? Judged,
    double? AdjustedP
);

/// <summary>A characteristic with the number of its values; <c>Watched</c> is false while they are too few.</summary>
public sealed record WatchedRow(
    string Kind,
    string Model,
    string Stage,
    string StageTitle,
    string Characteristic,
    string Label,
    int Values,
    bool Watched
);

/// <summary>What stands, what is watched, and how it is found.</summary>
public sealed record NoticesAnswer(
    DateTimeOffset From,
    DateTimeOffset NewsFrom,
    DateTimeOffset To,
    int Watched,
    int TooFewValues,
    int FilmLots,
    string Computed,
    IReadOnlyList<NoticeRow> Items,
    IReadOnlyList<WatchedRow> Charts,
    string? Next
);

/// <summary>An acknowledgement: what it was about, by whom and when.</summary>
public sealed record AcknowledgementRow(
    string Key,
    string? Kind,
    string? Model,
    string? Stage,
    string? Characteristic,
    int? Rule,
    string? FilmLot,
    int Points,
    string? Note,
    DateTimeOffset At,
    Who By
);
