using System.Text.Json.Serialization;

namespace Traceability.Domain.Scanning;

/// <summary>What the station asks, so that the next scan is the answer.</summary>
[JsonConverter(typeof(JsonStringEnumConverter<Question>))]
public enum Question
{
    /// <summary>Nothing: a scan is a scan.</summary>
    None,

    /// <summary>The PIN of the person whose badge was scanned.</summary>
    Pin,

    /// <summary>Why the attempt is abandoned.</summary>
    AbandonReason,

    /// <summary>What should stand in the place of a value already taken.</summary>
    CorrectValue,

    /// <summary>Why that value was wrong.</summary>
    CorrectReason,
}

/// <summary>An instrument on the bench.</summary>
public sealed record BenchInstrument(string Code, string Kind);

/// <summary>A reading that is being corrected, and what was typed to stand in its place.</summary>
public sealed record BenchCorrection(Guid ReadingId, string? Digits = null);

/// <summary>All that a station remembers between two scans; kept as JSON, never holding a PIN.</summary>
public sealed record StationSession
{
    /// <summary>A bench at which nobody has scanned anything.</summary>
    public static StationSession Empty { get; } = new();

    /// <summary>The person signed in.</summary>
    public string? Badge { get; init; }

    /// <summary>The person's name.</summary>
    public string? Name { get; init; }

    /// <summary>The badge whose PIN is asked.</summary>
    public string? BadgeToProve { get; init; }

    /// <summary>What is asked.</summary>
    public Question Asks { get; init; }

    /// <summary>The work station.</summary>
    public string? Station { get; init; }

    /// <summary>The part on the bench.</summary>
    public string? Part { get; init; }

    /// <summary>The stage it is at.</summary>
    public string? StageCode { get; init; }

    /// <summary>The stage, passed already, that is to be run once more on it; null when it goes on with its next.</summary>
    public string? Repeats { get; init; }

    /// <summary>The attempt open on it.</summary>
    public Guid? AttemptId { get; init; }

    /// <summary>The load it runs in.</summary>
    public Guid? LoadId { get; init; }

    /// <summary>Instruments on the bench, one of a kind; they stay from part to part.</summary>
    public IReadOnlyList<BenchInstrument> Instruments { get; init; } = [];

    /// <summary>The slot chosen to be filled next, when it is not the first.</summary>
    public string? ChosenPosition { get; init; }

    /// <summary>The characteristic chosen to be entered next, when it is not the first.</summary>
    public string? ChosenCharacteristic { get; init; }

    /// <summary>The reading that is being corrected, while that is asked about.</summary>
    public BenchCorrection? Correcting { get; init; }

    /// <summary>
    /// The part on the bench was just ended here: unless somebody turns to it again, the next part scanned takes its place, whatever
    /// stage comes next.
    /// </summary>
    public bool MakesWay { get; init; }

    /// <summary>Parts collected for one run, in the order of their scans.</summary>
    public IReadOnlyList<string> LoadParts { get; init; } = [];

    /// <summary>What the station said last.</summary>
    public Prompt? Last { get; init; }

    /// <summary>The person has been away too long: everything stays, but the PIN is asked again.</summary>
    public StationSession Lapsed() =>
        Badge is null ? this : this with { Badge = null, Name = null, BadgeToProve = Badge, Asks = Question.Pin, Correcting = null };

    internal StationSession WithoutPart() =>
        this with
        {
            Part = null,
            StageCode = null,
            Repeats = null,
            AttemptId = null,
            LoadId = null,
            ChosenPosition = null,
            ChosenCharacteristic = null,
            Correcting = null,
            MakesWay = false,
            Asks = Question.None,
        };

    // The facts know best what is open on the part. A question about an attempt that is open no more is void.
    internal StationSession InStepWith(StageNeeds? needs)
    {
        if (needs is null || needs.Part != Part)
            return this;
        var asked = IsVoidIn(needs) ? this with { Asks = Question.None, Correcting = null } : this;
        return asked with { StageCode = needs.StageCode, AttemptId = needs.AttemptId, LoadId = needs.LoadId };
    }

    /// <summary>Whether what is asked is about an attempt that somebody has ended meanwhile.</summary>
    internal bool IsVoidIn(StageNeeds? needs) =>
        Asks is Question.AbandonReason or Question.CorrectValue or Question.CorrectReason
        && needs is not null
        && needs.Part == Part
        && needs.AttemptId != AttemptId;

    internal StationSession WithoutChoice() => this with { ChosenPosition = null, ChosenCharacteristic = null };
}

/// <summary>What a scan leads to: the session from now on, what to say, what to do.</summary>
public sealed record StationStep(StationSession Session, Prompt Prompt, StationCommand Command);
