namespace Traceability.Domain.Gates;

/// <summary>What a part is now, in the order in which of several the first is said.</summary>
public enum StandingCode
{
    /// <summary>Not to be used any more, or inside something that is not.</summary>
    Scrapped,

    /// <summary>Left the workshop and came back since, by itself or inside something.</summary>
    Returned,

    /// <summary>Left the workshop, by itself or inside something.</summary>
    Shipped,

    /// <summary>A hold on it, or on a lot or part inside it, was not lifted.</summary>
    Held,

    /// <summary>A lot inside it is in quarantine; of a film lot: it is itself.</summary>
    Quarantined,

    /// <summary>Somebody must do something before it goes on.</summary>
    Blocked,

    /// <summary>Time must pass: before its next stage opens, or before the one under way may be closed.</summary>
    Waiting,

    /// <summary>A stage is under way on it, or may be started now.</summary>
    InWork,

    /// <summary>Fitted in another part.</summary>
    Fitted,

    /// <summary>A unit that passed its last stage and is in the house.</summary>
    Stock,

    /// <summary>Any other part that passed its last stage and is free to be fitted.</summary>
    Finished,
}
