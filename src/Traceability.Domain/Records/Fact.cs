namespace Traceability.Domain.Records;

/// <summary>
/// Something that happened and was written down. Facts are only ever added; a mistake is answered by a further fact.
/// </summary>
/// <param name="Id">UUIDv7 made by the shell, so that ids sort by the time of recording.</param>
/// <param name="By">The person who did it.</param>
/// <param name="OccurredAt">When it happened, as the person or instrument says; UTC.</param>
/// <param name="RecordedAt">When the server wrote it down; UTC.</param>
public abstract record Fact(Guid Id, Guid By, DateTimeOffset OccurredAt, DateTimeOffset RecordedAt);

/// <summary>Who acts, when it happened and when it is being recorded: the part that all facts of one command share.</summary>
/// <param name="By">The person who acts.</param>
/// <param name="OccurredAt">When it happened; UTC.</param>
/// <param name="RecordedAt">The server's clock; UTC.</param>
/// <param name="NewId">Makes the next id; the shell supplies UUIDv7.</param>
public sealed record Stamp(Guid By, DateTimeOffset OccurredAt, DateTimeOffset RecordedAt, Func<Guid> NewId);
