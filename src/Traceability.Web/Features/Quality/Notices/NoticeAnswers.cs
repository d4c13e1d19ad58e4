using Traceability.Persistence.Queries;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Notices;

/// <summary>
/// A notice that nobody has acknowledged. A broken rule names kind, model, stage, characteristic, rule and the last point.
/// </summary>
/// <param name="Key" example="9f2c5a7d0b1e4c3a8d6f2b7e">What it is acknowledged by.</param>
/// <param name="What" example="rule-break">rule-break or film-lot.</param>
/// <param name="Kind" example="diaphragm">The kind of part; null for a film lot.</param>
/// <param name="Model" example="TARN-1">Its model; null for a film lot.</param>
/// <param name="Stage" example="ring-resonance">The stage's code; null for a film lot.</param>
/// <param name="StageTitle" example="Resonance on the ring">The stage's title.</param>
/// <param name="Characteristic" example="ringResonanceHz">The characteristic.</param>
/// <param name="Label" example="Resonance">What it is called.</param>
/// <param name="Unit" example="Hz">Its unit.</param>
/// <param name="Rule" example="1">Nelson's rule, 1 to 8; null for a film lot.</param>
/// <param name="FilmLot" example="F-2603">The film lot that stands out; null for a broken rule.</param>
/// <param name="Points" example="2">New points that break the rule, or diaphragms of the lot that failed.</param>
/// <param name="Serial" example="DS-0107">The part of the last point.</param>
/// <param name="Value" example="1121">Its value, in the unit.</param>
/// <param name="LastAt" example="2026-11-20T13:40:00Z">When the last of it happened.</param>
/// <param name="ChartFrom" example="2026-08-24T07:10:00Z">The first value of the chart.</param>
/// <param name="Judged" example="40">Diaphragms of the film lot that came to a verdict.</param>
/// <param name="AdjustedP" example="0.021">Adjusted p of the film lot's comparison with the rest, 0 to 1.</param>
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

/// <summary>A main characteristic with the number of its values.</summary>
/// <param name="Kind" example="diaphragm">The kind of part.</param>
/// <param name="Model" example="TARN-1">Its model.</param>
/// <param name="Stage" example="ring-resonance">The stage's code.</param>
/// <param name="StageTitle" example="Resonance on the ring">The stage's title.</param>
/// <param name="Characteristic" example="ringResonanceHz">The characteristic.</param>
/// <param name="Label" example="Resonance">What it is called.</param>
/// <param name="Values" example="120">How many values there are.</param>
/// <param name="Watched" example="true">False while they are too few.</param>
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

/// <summary>What stands now, what is watched, and how it is found.</summary>
/// <param name="From" example="2026-09-01T00:00:00Z">Values from then on make the limits.</param>
/// <param name="NewsFrom" example="2026-10-31T00:00:00Z">A rule broken earlier is no news.</param>
/// <param name="To" example="2026-11-30T00:00:00Z">The moment of asking.</param>
/// <param name="Watched" example="31">Characteristics watched.</param>
/// <param name="TooFewValues" example="4">Characteristics with too few values.</param>
/// <param name="FilmLots" example="6">Film lots compared.</param>
/// <param name="Computed" example="A notice is a rule of a control chart that the newest values break.">
/// How notices are found, in words.
/// </param>
/// <param name="Items">The notices.</param>
/// <param name="Charts">What is watched.</param>
/// <param name="Next" example="Mzc">Cursor of the next page; null at the end.</param>
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
/// <param name="Key" example="9f2c5a7d0b1e4c3a8d6f2b7e">The notice's key.</param>
/// <param name="Kind" example="diaphragm">The kind of part; null for a film lot.</param>
/// <param name="Model" example="TARN-1">Its model; null for a film lot.</param>
/// <param name="Stage" example="ring-resonance">The stage's code; null for a film lot.</param>
/// <param name="Characteristic" example="ringResonanceHz">The characteristic; null for a film lot.</param>
/// <param name="Rule" example="1">Nelson's rule, 1 to 8; null for a film lot.</param>
/// <param name="FilmLot" example="F-2603">The film lot; null for a broken rule.</param>
/// <param name="Points" example="2">Points that broke the rule, or diaphragms that had failed.</param>
/// <param name="Note" example="new roll, being looked into">What was noted; null when nothing was.</param>
/// <param name="At" example="2026-11-21T08:00:00Z">When it was acknowledged.</param>
/// <param name="By">Who acknowledged it.</param>
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
