using Traceability.Domain.Codes;
using Traceability.Domain.Values;

namespace Traceability.Domain.Scanning;

/// <summary>What came into the scan box: a closed set.</summary>
/// <remarks>
/// A code says which part, lot or instrument it is, but not of what kind. The shell looks that up when asked
/// (<see cref="StationCommand.LookUp"/>) and brings the same scan again with the kind filled in; so too for bare text and for a carrier,
/// which become what they stand for.
/// </remarks>
public abstract record Scan
{
    private Scan() { }

    /// <summary>A person's badge.</summary>
    public sealed record Badge(string Code) : Scan;

    /// <summary>A work station.</summary>
    public sealed record Station(string Code) : Scan;

    /// <summary>A part by its serial; its kind once it is known.</summary>
    public sealed record Part(string Serial, string? PartKind = null) : Scan;

    /// <summary>A jig or tray that stands for the part in it.</summary>
    public sealed record Carrier(string Code) : Scan;

    /// <summary>A lot by its number; its kind once it is known.</summary>
    public sealed record Lot(string Code, string? LotKind = null) : Scan;

    /// <summary>An instrument; its kind once it is known.</summary>
    public sealed record Instrument(string Code, string? InstrumentKind = null) : Scan;

    /// <summary>A line of the action sheet.</summary>
    public sealed record Action(StationAction What) : Scan;

    /// <summary>A slot, or a characteristic, by its name.</summary>
    public sealed record Position(string Name) : Scan;

    /// <summary>A plain number. It may be a PIN, so it does not print itself.</summary>
    public sealed record Number(EnteredDecimal Value, string Typed) : Scan
    {
        /// <inheritdoc/>
        public override string ToString() => "Number";
    }

    /// <summary>Meant as a number but not to be taken for one. It may be a PIN, so it does not print itself.</summary>
    public sealed record BadNumber(string Typed, string Problem) : Scan
    {
        /// <inheritdoc/>
        public override string ToString() => "BadNumber";
    }

    /// <summary>Text without a kind: somebody's own number to be looked up, or an answer in words.</summary>
    public sealed record Bare(string Text) : Scan;

    /// <summary>A printed code whose check character is wrong.</summary>
    public sealed record WrongCheck(CodeKind Kind, string Id, char Found, char Expected) : Scan;

    /// <summary>Nothing but blanks: Enter alone.</summary>
    public sealed record Nothing : Scan;
}
