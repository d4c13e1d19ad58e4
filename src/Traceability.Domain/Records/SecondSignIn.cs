namespace Traceability.Domain.Records;

/// <summary>
/// Somebody who works alone did what two people should do, signed in a second time with the PIN and said why. <c>Rule</c> is the rule that
/// asked for two, <c>SubjectId</c> what it was about: a part, a nonconformity or a revision of a route. <c>Stage</c> is the stage that was
/// opened so.
/// </summary>
public sealed record SecondSignIn(
    Guid Id,
    Guid? PartId,
    Guid SubjectId,
    string Rule,
    string? Stage,
    string Reason,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);
