using Traceability.Domain.Values;

namespace Traceability.Domain.Scanning;

/// <summary>
/// What the shell must do after a scan; a closed set. Whether it may is judged there again, whatever the station believed.
/// </summary>
public abstract record StationCommand
{
    private StationCommand() { }

    /// <summary>Nothing to do.</summary>
    public sealed record Nothing : StationCommand;

    /// <summary>Check a PIN; answer with <see cref="ScanOutcome.Identified"/> or <see cref="ScanOutcome.NotIdentified"/>.</summary>
    public sealed record Identify(string Badge, Pin Pin) : StationCommand;

    /// <summary>Find out what it is and bring the scan again with its kind, or answer <see cref="ScanOutcome.Unknown"/>.</summary>
    public sealed record LookUp(Scan What) : StationCommand;

    /// <summary>Load what the part needs; answer <see cref="ScanOutcome.Shown"/>.</summary>
    public sealed record ShowPart(string Serial) : StationCommand;

    /// <summary>Open an attempt; answer <see cref="ScanOutcome.Opened"/>.</summary>
    public sealed record OpenAttempt(string Part, string StageCode, string Station, IReadOnlyList<string> Instruments) : StationCommand;

    /// <summary>Keep a reading; answer <see cref="ScanOutcome.Kept"/>.</summary>
    public sealed record RecordReading(Guid AttemptId, string Characteristic, EnteredDecimal Value) : StationCommand;

    /// <summary>Supersede a reading of the open attempt, with the reason; answer <see cref="ScanOutcome.Kept"/>.</summary>
    public sealed record CorrectReading(Guid ReadingId, string Digits, string Reason) : StationCommand;

    /// <summary>Fit a part or a lot; one of the two is given. Answer <see cref="ScanOutcome.Kept"/>.</summary>
    public sealed record Fit(Guid AttemptId, string Position, string? Child, string? Lot) : StationCommand;

    /// <summary>See whether the instrument can be used; answer only when it cannot (<see cref="ScanOutcome.InstrumentRefused"/>).</summary>
    public sealed record AddInstrument(string Code) : StationCommand;

    /// <summary>
    /// See whether the part can join the load; answer only when it cannot (<see cref="ScanOutcome.LoadPartRefused"/>). With <c>Again</c>
    /// it may have passed the stage before.
    /// </summary>
    public sealed record AddToLoad(string Serial, string? StageCode, bool Again = false) : StationCommand;

    /// <summary>Start one run for many parts; answer <see cref="ScanOutcome.LoadStarted"/>.</summary>
    public sealed record StartLoad(string StageCode, string Station, IReadOnlyList<string> Instruments, IReadOnlyList<string> Parts)
        : StationCommand;

    /// <summary>Close the attempt and have it judged; answer <see cref="ScanOutcome.Closed"/>.</summary>
    public sealed record CloseAttempt(Guid AttemptId) : StationCommand;

    /// <summary>Close the load for all its parts; answer <see cref="ScanOutcome.Closed"/>.</summary>
    public sealed record CloseLoad(Guid LoadId) : StationCommand;

    /// <summary>Give the attempt up; answer <see cref="ScanOutcome.Abandoned"/>.</summary>
    public sealed record Abandon(Guid AttemptId, string Reason) : StationCommand;

    /// <summary>End the person's session.</summary>
    public sealed record SignOut(string Badge) : StationCommand;
}
