namespace Traceability.Domain.Records;

/// <summary>What a workshop is set up with, and may take back again.</summary>
public enum SetupSort
{
    /// <summary>Somebody who works here.</summary>
    Person,

    /// <summary>A bench or cabinet.</summary>
    Station,

    /// <summary>A measuring instrument or cabinet.</summary>
    Instrument,

    /// <summary>A quantity of material that arrived together.</summary>
    Lot,

    /// <summary>A jig, tray or tin.</summary>
    Carrier,

    /// <summary>A kind in one of the workshop's lists.</summary>
    Kind,

    /// <summary>A model that is built.</summary>
    Model,
}

/// <summary>Whether something of the set-up is offered for new work.</summary>
public enum SetupState
{
    /// <summary>Offered; where everything begins.</summary>
    InUse,

    /// <summary>Kept and seen, and no longer offered; of a person: signs in no more.</summary>
    Retired,

    /// <summary>Entered by mistake: nothing depends on it, and it is seen nowhere but in its own history.</summary>
    Mistake,
}

/// <summary>
/// Something of the set-up was retired, taken back as entered by mistake, or taken into use again. The latest decision counts. Models and
/// kinds have no row of their own to refer to: their <c>SubjectId</c> is made of their name (<see cref="NamedSubject"/>).
/// </summary>
public sealed record SetupDecision(
    Guid Id,
    Guid SubjectId,
    SetupSort Sort,
    string Code,
    SetupState State,
    string Reason,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>
/// The name of a person, or what a station or an instrument is called, was written wrong. Both stay in the record; the latest counts.
/// </summary>
public sealed record NameCorrection(
    Guid Id,
    Guid SubjectId,
    string Name,
    string Reason,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);
