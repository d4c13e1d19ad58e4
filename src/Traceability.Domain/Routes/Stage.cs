namespace Traceability.Domain.Routes;

/// <summary>One station of a route: what is done, with what, measured how, and when it may start and end.</summary>
public sealed record Stage(string Code, string Title, string Method)
{
    /// <summary>What to do, sentence by sentence, in the words of the workshop.</summary>
    public IReadOnlyList<string> Instructions { get; init; } = [];

    /// <summary>The usual cautions to show while this is done; codes of <see cref="Cautions"/>.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>What must be fitted, a slot each, in the order of the work.</summary>
    public IReadOnlyList<Slot> Slots { get; init; } = [];

    /// <summary>What is measured or computed here, in the order of the work.</summary>
    public IReadOnlyList<Characteristic> Characteristics { get; init; } = [];

    /// <summary>Files that belong to the record.</summary>
    public IReadOnlyList<EvidenceNeed> Evidence { get; init; } = [];

    /// <summary>Least time between opening and closing (a cure on the plate), in minutes.</summary>
    public int? MinimumOpenMinutes { get; init; }

    /// <summary>Least times that must have passed since earlier stages closed.</summary>
    public IReadOnlyList<Wait> Waits { get; init; } = [];

    /// <summary>Times after earlier stages closed by which this one must have started.</summary>
    public IReadOnlyList<Window> Windows { get; init; } = [];

    /// <summary>Kinds of instrument that must be named, one of each.</summary>
    public IReadOnlyList<string> InstrumentKinds { get; init; } = [];

    /// <summary>True when those instruments must have been checked against their reference on the same day.</summary>
    public bool CheckedToday { get; init; }

    /// <summary>What the builder must be qualified for, if anything.</summary>
    public string? Qualification { get; init; }

    /// <summary>True when many parts may go through together under one start, one log and one end.</summary>
    public bool Loads { get; init; }

    /// <summary>How often the stage may be failed before only scrap, concession or regrade are left; null = no limit.</summary>
    public int? AllowedAttempts { get; init; }

    /// <summary>
    /// True when it may be run again after a pass, as long as no later stage was begun (a second cure); the last run counts.
    /// </summary>
    public bool Repeatable { get; init; }

    /// <summary>The stage to which a rework of this stage usually returns; null = this one.</summary>
    public string? ReworkReturnsTo { get; init; }

    /// <summary>Stages whose builder may not do this one (two people: who builds does not release).</summary>
    public IReadOnlyList<string> NotByBuilderOf { get; init; } = [];

    /// <summary>True when the part leaves its jig or tray once this stage is passed.</summary>
    public bool FreesCarrier { get; init; }

    /// <summary>The children in these slots must match each other.</summary>
    public MatchRule? Match { get; init; }

    /// <summary>What the method reads from the route: soak phases, a response mask, a pot life.</summary>
    public StageParameters Parameters { get; init; } = StageParameters.None;

    /// <summary>The characteristic of that name, or null.</summary>
    public Characteristic? Characteristic(string name) => Characteristics.FirstOrDefault(c => c.Name == name);

    /// <summary>The slot at that position, or null.</summary>
    public Slot? Slot(string position) => Slots.FirstOrDefault(s => s.Position == position);
}

/// <summary>
/// A named place in a stack or housing, and what may be fitted there: a lot of a kind, or a finished part of a kind and the same model.
/// </summary>
public sealed record Slot(string Position, string Label, string? LotKind, string? PartKind, bool Required)
{
    /// <summary>The kind accepted, in words.</summary>
    public string Accepts => LotKind is null ? RouteTexts.AFinished(PartKind) : RouteTexts.ALot(LotKind);
}

/// <summary>A file that the stage wants: a closed kind (climate-log, frequency-response, ...) under a name of its own.</summary>
/// <param name="Name" example="plate-log">The name under which it is kept.</param>
/// <param name="Kind" example="climate-log">Its kind, which says how the file is read.</param>
/// <param name="Required" example="true">False when the stage may end without it.</param>
public sealed record EvidenceNeed(string Name, string Kind, bool Required);

/// <summary>This stage may start only so long after that one closed; minutes.</summary>
/// <param name="AfterStage" example="mount">The earlier stage.</param>
/// <param name="MinimumMinutes" example="720">The least time since it closed, min.</param>
public sealed record Wait(string AfterStage, int MinimumMinutes);

/// <summary>This stage must start no later than so long after that one closed; minutes.</summary>
/// <param name="AfterStage" example="mount">The earlier stage.</param>
/// <param name="MaximumMinutes" example="2880">The most time since it closed, min.</param>
public sealed record Window(string AfterStage, int MaximumMinutes);

/// <summary>
/// The named characteristic of the parts in these positions may differ by no more than this, in the characteristic's own unit.
/// </summary>
/// <param name="Positions">The positions whose parts are compared.</param>
/// <param name="Characteristic" example="ringHz">What is compared.</param>
/// <param name="MaximumDifference" example="15">How far apart they may be, in the unit of the characteristic.</param>
public sealed record MatchRule(IReadOnlyList<string> Positions, string Characteristic, decimal MaximumDifference)
{
    /// <summary>True when they must also be of one film lot.</summary>
    /// <example>true</example>
    public bool SameFilmLot { get; init; }

    /// <summary>
    /// Further characteristics in which they may not differ too much; a part that has no value of one is not judged by it.
    /// </summary>
    public IReadOnlyList<MatchLimit> Further { get; init; } = [];
}

/// <summary>A characteristic and the greatest difference allowed in it, in its own unit.</summary>
/// <param name="Characteristic" example="ringTensionNm">The characteristic.</param>
/// <param name="MaximumDifference" example="3.5">The greatest difference allowed, in the characteristic's unit.</param>
public sealed record MatchLimit(string Characteristic, decimal MaximumDifference);
