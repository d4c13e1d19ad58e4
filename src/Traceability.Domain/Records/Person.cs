namespace Traceability.Domain.Records;

/// <summary>What a person may do here. A person may hold several.</summary>
public enum Role
{
    /// <summary>Builds: opens attempts, records readings, fits parts.</summary>
    Builder,

    /// <summary>Decides: releases lots, disposes of nonconformities, holds, issues certificates.</summary>
    Quality,

    /// <summary>Looks after returned units.</summary>
    Service,

    /// <summary>Keeps routes, people, stations and instruments.</summary>
    Lead,

    /// <summary>Enters older records: may state a past time.</summary>
    Importer,

    /// <summary>A measuring instrument that sends readings by itself.</summary>
    Instrument,
}

/// <summary>Somebody known here by a badge. The PIN is kept elsewhere, as a slow hash.</summary>
public sealed record Person(Guid Id, string Badge, string Name, Guid By, DateTimeOffset OccurredAt, DateTimeOffset RecordedAt)
    : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>A role was given to a person, or taken away.</summary>
public sealed record RoleGrant(Guid Id, Guid PersonId, Role Role, bool Given, Guid By, DateTimeOffset OccurredAt, DateTimeOffset RecordedAt)
    : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>A person was found able to do a kind of work (or no longer); it may end on a day.</summary>
public sealed record QualificationGrant(
    Guid Id,
    Guid PersonId,
    string Code,
    bool Given,
    DateOnly? ValidUntil,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>The slow hash of a person's PIN; the latest counts. Never written to the ledger or a log.</summary>
public sealed record PinSetting(Guid Id, Guid PersonId, string Hash, Guid By, DateTimeOffset OccurredAt, DateTimeOffset RecordedAt)
    : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>
/// A code was given out by which a person sets the own PIN, once and until it expires; the PIN of before is good no longer. Only the
/// SHA-256 of the code is kept. The latest code counts, and only as long as no PIN was set after it.
/// </summary>
public sealed record PinCode(
    Guid Id,
    Guid PersonId,
    string Hash,
    string Reason,
    DateTimeOffset ExpiresAt,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>A bench or cabinet where stages are carried out.</summary>
public sealed record Station(Guid Id, string Code, string Title, Guid By, DateTimeOffset OccurredAt, DateTimeOffset RecordedAt)
    : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>A jig, tray or tin with a coded tag of its own.</summary>
public sealed record Carrier(Guid Id, string Code, string Kind, Guid By, DateTimeOffset OccurredAt, DateTimeOffset RecordedAt)
    : Fact(Id, By, OccurredAt, RecordedAt);
