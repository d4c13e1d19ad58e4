namespace Traceability.Domain.Records;

/// <summary>
/// A revision of a route as it was loaded: its text, hash, author and approver. Never changed, only followed by the next. <c>ApprovedBy</c> is empty when
/// it was loaded as a proposal: it is then in force only once a <see cref="RouteApproval"/> says so, and from the day that this says.
/// </summary>
public sealed record RouteRevision(
    Guid Id, string Model, string Kind, int Revision, string Text, string Hash, string Author, string ApprovedBy, DateOnly EffectiveFrom,
    Guid By, DateTimeOffset OccurredAt, DateTimeOffset RecordedAt) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>A proposed revision of a route was approved by somebody who did not write it; parts started from that day on take it.</summary>
public sealed record RouteApproval(
    Guid Id, Guid RouteId, DateOnly EffectiveFrom, string Reason,
    Guid By, DateTimeOffset OccurredAt, DateTimeOffset RecordedAt) : Fact(Id, By, OccurredAt, RecordedAt);
