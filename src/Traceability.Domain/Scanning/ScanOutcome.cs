namespace Traceability.Domain.Scanning;

/// <summary>What came of a command, told back to the station; a closed set.</summary>
public abstract record ScanOutcome
{
    private ScanOutcome() { }

    /// <summary>The PIN was right.</summary>
    public sealed record Identified(string Badge, string Name) : ScanOutcome;

    /// <summary>The PIN was wrong, or the person is locked out: why, in words.</summary>
    public sealed record NotIdentified(string Because) : ScanOutcome;

    /// <summary>Nothing of that name is known.</summary>
    public sealed record Unknown(string Text) : ScanOutcome;

    /// <summary>A reading, a correction or a fitting was kept; what comes next depends on what the stage needs now.</summary>
    public sealed record Kept : ScanOutcome;

    /// <summary>The part and its needs are at hand.</summary>
    public sealed record Shown : ScanOutcome;

    /// <summary>The attempt is open.</summary>
    public sealed record Opened(Guid AttemptId) : ScanOutcome;

    /// <summary>The load is started.</summary>
    public sealed record LoadStarted(Guid LoadId) : ScanOutcome;

    /// <summary>An attempt or a load was closed and judged: the verdict in words.</summary>
    public sealed record Closed(bool Passed, string Verdict) : ScanOutcome;

    /// <summary>The attempt was abandoned.</summary>
    public sealed record Abandoned : ScanOutcome;

    /// <summary>The instrument cannot be used.</summary>
    public sealed record InstrumentRefused(string Code, string Because) : ScanOutcome;

    /// <summary>The part cannot join the load.</summary>
    public sealed record LoadPartRefused(string Serial, string Because) : ScanOutcome;

    /// <summary>The command was refused and nothing was written: why, in one line, and more.</summary>
    public sealed record Refused(string Because, string? Detail = null) : ScanOutcome;
}
