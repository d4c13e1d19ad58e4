namespace Traceability.Persistence.Queries.Analyses;

/// <summary>
/// What an analysis is about: from a moment (included) to a moment (excluded), one model or all, one stage or all. <c>Zone</c> is the
/// workshop's time zone, in which days and weeks are counted.
/// </summary>
public sealed record AnalysisFilter(DateTimeOffset From, DateTimeOffset To, string? Model, string? Stage, string Zone);
