using Traceability.Domain.Routes;

namespace Traceability.Domain.Stages;

/// <summary>
/// What a stage computes from its readings and evidence. Pure and versioned: the version is kept with every computed reading
/// and must be raised whenever a change could give another value or verdict for the same evidence.
/// </summary>
public abstract class StageMethod
{
    /// <summary>The name that route files use.</summary>
    public abstract string Name { get; }

    /// <summary>Raised whenever the same input could give another result.</summary>
    public abstract int Version { get; }

    /// <summary>What a route stage must have for this method to work; in words, empty when all is well.</summary>
    public virtual IEnumerable<string> ProblemsWith(Stage stage) => [];

    /// <summary>Computes and finds. Limits of characteristics are judged by the caller; findings are for everything else.</summary>
    public abstract StageOutcome Judge(StageInput input);

    /// <summary>How a computed characteristic comes about, for the page: the equation, its symbols with units, its source. Null when this method does not compute it.</summary>
    public virtual string? HowComputed(string characteristic) => null;

    /// <summary>A problem text for every named computed characteristic that the stage lacks.</summary>
    protected static IEnumerable<string> NeedsComputed(Stage stage, params IEnumerable<string> names) =>
        names.Where(n => stage.Characteristic(n) is not { Entered: false }).Select(n => $"its method computes '{n}'; give that characteristic with 'entered: false'");

    /// <summary>A problem text for every named entered characteristic that the stage lacks.</summary>
    protected static IEnumerable<string> NeedsEntered(Stage stage, params IEnumerable<string> names) =>
        names.Where(n => stage.Characteristic(n) is not { Entered: true, Required: true }).Select(n => $"its method reads '{n}'; give that characteristic, and not as one that may be left open");
}

/// <summary>What a method is given.</summary>
/// <param name="Stage">The stage with its limits and parameters.</param>
/// <param name="Entered">Values entered in this attempt, by characteristic; corrections applied.</param>
/// <param name="Evidence">The files of this attempt, or of its load; the latest under each name.</param>
/// <param name="OpenedAt">When the attempt began; UTC.</param>
/// <param name="ClosedAt">When it ends; UTC.</param>
/// <param name="Earlier">The counting value of a characteristic from an earlier stage of the same part, or null.</param>
public sealed record StageInput(
    Stage Stage, IReadOnlyDictionary<string, decimal> Entered, IReadOnlyList<EvidenceFile> Evidence, DateTimeOffset OpenedAt, DateTimeOffset ClosedAt,
    Func<string, decimal?> Earlier)
{
    /// <summary>The file under that name, or null.</summary>
    public EvidenceFile? File(string name) => Evidence.LastOrDefault(e => e.Name == name);
}

/// <summary>A stored file with its bytes.</summary>
public sealed record EvidenceFile(Guid Id, string Name, string Kind, ReadOnlyMemory<byte> Bytes, decimal? FullScaleV);

/// <summary>A value that a method computed, with the digits to show and the evidence it came from.</summary>
public sealed record ComputedValue(string Characteristic, decimal Value, string Digits, Guid? EvidenceId);

/// <summary>Something a method found, in words for the builder; it may fail the attempt.</summary>
public sealed record StageFinding(string Text, bool Fails);

/// <summary>What a method arrived at. When <c>Unreadable</c> is set, no verdict can be given and the words say why.</summary>
public sealed record StageOutcome(IReadOnlyList<ComputedValue> Computed, IReadOnlyList<StageFinding> Findings, string? Unreadable = null)
{
    /// <summary>Nothing computed, nothing found.</summary>
    public static readonly StageOutcome Nothing = new([], []);

    /// <summary>The evidence cannot be judged.</summary>
    public static StageOutcome CannotJudge(string why) => new([], [], why);
}
