namespace Traceability.Domain.Gates;

/// <summary>One rule's answer: whether it is met, why, what would help, and for time rules from or until when.</summary>
/// <param name="Rule" example="wait-elapsed">The rule's stable code.</param>
/// <param name="Met" example="false">Whether it is met.</param>
/// <param name="Because" example="the adhesive cures until 14:20">Why it is met or not, in words.</param>
/// <param name="Remedy" example="start at 14:20">What would help.</param>
/// <param name="OpensAt" example="2026-11-25T14:20:00Z">From when it is met, for a rule of time.</param>
/// <param name="ClosesAt" example="2026-11-25T16:20:00Z">Until when it is met, for a rule of time.</param>
public sealed record GateCheck(
    string Rule,
    bool Met,
    string Because,
    string? Remedy = null,
    DateTimeOffset? OpensAt = null,
    DateTimeOffset? ClosesAt = null
);

/// <summary>Where a stage stands for a part.</summary>
public enum StageState
{
    /// <summary>Passed, and the pass counts.</summary>
    Passed,

    /// <summary>May be started now, or is being worked on.</summary>
    Open,

    /// <summary>Opens by itself when a wait is over.</summary>
    Waiting,

    /// <summary>Something must be done first.</summary>
    Blocked,

    /// <summary>Earlier stages come first.</summary>
    Later,
}

/// <summary>The gate of one stage with every rule that applies to it.</summary>
public sealed record GateVerdict(string Stage, string Title, StageState State, IReadOnlyList<GateCheck> Checks)
{
    /// <summary>True when every rule is met.</summary>
    public bool Open => Checks.All(c => c.Met);

    /// <summary>The rules that are not met.</summary>
    public IEnumerable<GateCheck> Unmet => Checks.Where(c => !c.Met);

    /// <summary>From when the stage may start, when only time keeps it shut.</summary>
    public DateTimeOffset? OpensAt => Checks.Max(c => c.OpensAt);

    /// <summary>Until when the stage must have started.</summary>
    public DateTimeOffset? ClosesAt => Checks.Min(c => c.ClosesAt);
}
