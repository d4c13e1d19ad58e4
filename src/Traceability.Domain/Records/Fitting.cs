namespace Traceability.Domain.Records;

/// <summary>
/// A child part or some of a lot was fitted into a part at a named position. Exactly one of <c>ChildId</c> and <c>LotId</c> is set.
/// </summary>
public sealed record Fitting(
    Guid Id,
    Guid PartId,
    Guid AttemptId,
    string Position,
    Guid? ChildId,
    Guid? LotId,
    decimal? Quantity,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt)
{
    /// <summary>The id of what was fitted, part or lot.</summary>
    public Guid ItemId => ChildId ?? LotId ?? throw new InvalidOperationException($"Fitting {Id} names neither a part nor a lot.");
}

/// <summary>What was fitted came out again; passes from the stage that fitted it no longer count.</summary>
public sealed record Removal(
    Guid Id,
    Guid PartId,
    Guid FittingId,
    string Reason,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);
