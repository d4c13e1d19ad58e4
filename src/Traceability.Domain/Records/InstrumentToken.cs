namespace Traceability.Domain.Records;

/// <summary>
/// A token was made by which an instrument sends its readings by itself. Only the SHA-256 of the token is kept (lower-case hex); the token,
/// 256 random bits, was shown once to whoever made it.
/// </summary>
public sealed record InstrumentToken(
    Guid Id,
    Guid InstrumentId,
    string Title,
    string Hash,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>A token is good no more.</summary>
public sealed record InstrumentTokenRevocation(
    Guid Id,
    Guid TokenId,
    string Reason,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);
