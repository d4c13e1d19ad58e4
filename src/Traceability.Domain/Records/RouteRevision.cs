namespace Traceability.Domain.Records;

/// <summary>
/// A revision of a route as it was loaded: its text, hash and author. Never changed, only followed by the next. It is a proposal, and in
/// force only once a <see cref="RouteApproval"/> says so, from the day that this says. <c>ApprovedBy</c> is empty but for revisions of the
/// time when a file could put itself in force by naming its approver.
/// </summary>
public sealed record RouteRevision(
    Guid Id,
    string Model,
    string Kind,
    int Revision,
    string Text,
    string Hash,
    string Author,
    string ApprovedBy,
    DateOnly EffectiveFrom,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>A proposed revision of a route was approved by somebody who did not write it; parts started from that day on take it.</summary>
public sealed record RouteApproval(
    Guid Id,
    Guid RouteId,
    DateOnly EffectiveFrom,
    string Reason,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>How a proposed revision came to nothing.</summary>
public enum RouteEndingKind
{
    /// <summary>Somebody else than its author said no.</summary>
    Rejected,

    /// <summary>Its author took it back.</summary>
    Withdrawn,
}

/// <summary>A proposed revision of a route came to nothing: it will never be in force.</summary>
public sealed record RouteEnding(
    Guid Id,
    Guid RouteId,
    RouteEndingKind Kind,
    string Reason,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);
