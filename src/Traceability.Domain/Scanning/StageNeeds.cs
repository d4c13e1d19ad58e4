using Traceability.Domain.Values;
using Traceability.Domain.Values.Limits;

namespace Traceability.Domain.Scanning;

/// <summary>The gate of the part's present stage, as far as a station must tell it apart.</summary>
public enum GateSign
{
    /// <summary>The stage may start, or is under way.</summary>
    Open,

    /// <summary>Time will open it.</summary>
    Waiting,

    /// <summary>Somebody must do something first, or nothing is left to do.</summary>
    Blocked,
}

/// <summary>What the part's present stage still needs; made by the shell from the facts before every step.</summary>
/// <param name="Part">The part's serial.</param>
/// <param name="StageCode">The stage it is at.</param>
/// <param name="StageTitle">The stage in words.</param>
/// <param name="Gate">Whether it may start.</param>
/// <param name="GateWords">Why not, or when, or that it may.</param>
public sealed record StageNeeds(string Part, string StageCode, string StageTitle, GateSign Gate, string GateWords)
{
    /// <summary>The attempt now open on the part, if any.</summary>
    public Guid? AttemptId { get; init; }

    /// <summary>The load that the attempt belongs to, if any.</summary>
    public Guid? LoadId { get; init; }

    /// <summary>Slots still empty, in the order of the work.</summary>
    public IReadOnlyList<EmptySlot> Slots { get; init; } = [];

    /// <summary>Values still to be entered, in the order of the work.</summary>
    public IReadOnlyList<MissingCharacteristic> Characteristics { get; init; } = [];

    /// <summary>Values already entered into the open attempt, in the order in which they were taken.</summary>
    public IReadOnlyList<TakenReading> Taken { get; init; } = [];

    /// <summary>Files still to be sent, in words.</summary>
    public IReadOnlyList<string> Evidence { get; init; } = [];

    /// <summary>The kinds of instrument the stage asks for, one of each.</summary>
    public IReadOnlyList<string> InstrumentKinds { get; init; } = [];

    /// <summary>What bars the closing of an attempt in which nothing is missing; null when closing would be accepted.</summary>
    public ClosingBar? Bar { get; init; }

    /// <summary>Whether many parts may go through the stage in one run.</summary>
    public bool MayRunAsLoad { get; init; }

    /// <summary>The stage that was passed and may be run once more, if any.</summary>
    public RepeatableStage? Repeatable { get; init; }

    internal bool IsUnderWay => AttemptId is not null;
}

/// <summary>Why an attempt in which nothing is missing may not be closed yet.</summary>
/// <param name="Sign">Whether time or somebody must lift it.</param>
/// <param name="Words">Until when it lasts (<see cref="GateSign.Waiting"/>), or else the reason and what to do, as sentences.</param>
public sealed record ClosingBar(GateSign Sign, string Words);

/// <summary>A value that was entered into the open attempt.</summary>
/// <param name="Id">The reading that a correction would supersede.</param>
/// <param name="What">The characteristic with its limits.</param>
/// <param name="Digits">The digits that count now.</param>
/// <param name="IsMet">Whether that value conforms to its limits.</param>
public sealed record TakenReading(Guid Id, MissingCharacteristic What, string Digits, bool IsMet = true);

/// <summary>A stage that was passed and may be run once more.</summary>
public sealed record RepeatableStage(string Code, string Title);

/// <summary>A slot that nothing is fitted in yet.</summary>
/// <param name="Position">Its code.</param>
/// <param name="Label">Its name in words.</param>
/// <param name="LotKind">The kind of lot it takes, or nothing.</param>
/// <param name="PartKind">The kind of part it takes, or nothing.</param>
/// <param name="IsRequired">Whether the stage cannot close without it.</param>
public sealed record EmptySlot(string Position, string Label, string? LotKind, string? PartKind, bool IsRequired = true)
{
    internal string Takes => PartKind ?? (LotKind is null ? PromptTexts.TakesNothing : PromptTexts.LotOfKind(LotKind));
}

/// <summary>A value that is not entered yet, with its limits (both included; none = not judged).</summary>
/// <param name="Name">Its name in readings.</param>
/// <param name="Label">Its name in words.</param>
/// <param name="Unit">The code of its unit.</param>
/// <param name="Lower">The lower limit.</param>
/// <param name="Upper">The upper limit.</param>
public sealed record MissingCharacteristic(string Name, string Label, string Unit, decimal? Lower, decimal? Upper)
{
    /// <summary>False when the stage may be closed without it.</summary>
    public bool IsRequired { get; init; } = true;

    /// <summary>U of its values with coverage factor 2; null when the route states none.</summary>
    public decimal? ExpandedUncertainty { get; init; }

    /// <summary>True when a value must be shown to conform.</summary>
    public bool Guarded { get; init; }

    internal string Symbol => Units.TryFind(Unit, out var unit, out _) ? unit.Symbol : Unit;

    internal bool IsMetBy(string digits) =>
        !EnteredDecimal.TryParseReading(digits, out var number, out _) || Judge(number.Value) == Conformity.Met;

    internal Conformity Judge(decimal value) => new Acceptance(Lower, Upper, ExpandedUncertainty, Guarded).Judge(value);

    internal string Limits =>
        (Lower, Upper) switch
        {
            ({ } lower, { } upper) => PromptTexts.FromTo(lower, upper, Symbol).TrimEnd(),
            ({ } lower, null) => PromptTexts.AtLeast(lower, Symbol).TrimEnd(),
            (null, { } upper) => PromptTexts.AtMost(upper, Symbol).TrimEnd(),
            _ => PromptTexts.NoLimits,
        };
}
