using System.Globalization;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
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

    /// <summary>True when it looks at what is fitted in the part, which must then be read for it.</summary>
    public virtual bool ReadsInside => false;

    /// <summary>True when it takes constants from the calibrations of the instruments in use, which must then be read for it.</summary>
    public virtual bool ReadsCalibrations => false;

    /// <summary>
    /// True when a log over the whole time of the stage judges it: then waits and windows count from what the log shows
    /// (<see cref="StageOutcome.CountsFrom"/>), and a record in one go must say when the stage began.
    /// </summary>
    public virtual bool JudgesALog => false;

    /// <summary>True when the stage puts a test voltage on a capsule: its gate then asks for the pull-in voltage first.</summary>
    public virtual bool TestsWithVoltage => false;

    /// <summary>
    /// The characteristics of earlier stages that it looks at; it is given no others. A correction of one of them makes it judge anew.
    /// </summary>
    public virtual IReadOnlyList<string> ReadsEarlier => [];

    /// <summary>
    /// The characteristics of fitted parts that it looks at; it is given no others. A correction of one of them makes it judge anew.
    /// </summary>
    public virtual IReadOnlyList<string> ReadsOfFittedParts => [];

    /// <summary>
    /// The numbers that it reads from <c>parameters: numbers</c>, each above zero. A route that states another is refused: a misspelt one
    /// would be passed over in silence.
    /// </summary>
    public virtual IReadOnlyList<string> ReadsNumbers => [];

    /// <summary>The numbers that it reads and that may also be zero or below.</summary>
    public virtual IReadOnlyList<string> ReadsSignedNumbers => [];

    /// <summary>The other keys that it reads under <c>parameters</c>. Where tolerances come from may be said at any stage.</summary>
    public virtual IReadOnlyList<string> ReadsParameters => [];

    /// <summary>What a route stage must have for this method to work; in words, empty when all is well.</summary>
    public virtual IEnumerable<string> ProblemsWith(Stage stage) => [];

    /// <summary>Computes and finds. Limits of characteristics are judged by the caller; findings are for everything else.</summary>
    public abstract StageOutcome Judge(StageInput input);

    /// <summary>
    /// How a computed characteristic comes about, for the page: the equation, its symbols with units, its source. Null when this method
    /// does not compute it.
    /// </summary>
    public virtual string? HowComputed(string characteristic) => null;

    /// <summary>A problem text for every named computed characteristic that the stage lacks.</summary>
    protected static IEnumerable<string> NeedsComputed(Stage stage, params IEnumerable<string> names) =>
        names.Where(n => stage.Characteristic(n) is not { Entered: false }).Select(n => StageTexts.MethodComputes(n));

    /// <summary>
    /// A problem text for every number that the route must state under 'parameters: numbers' and does not, or not above zero.
    /// </summary>
    protected static IEnumerable<string> NeedsNumbers(Stage stage, params IEnumerable<string> names) =>
        names
            .Where(n => !stage.Parameters.Numbers.TryGetValue(n, out var value) || value <= 0)
            .Select(n => StageTexts.MethodReadsTheNumber(n));

    /// <summary>A problem text for every computed characteristic of the stage that the method does not know.</summary>
    protected IEnumerable<string> ComputesNoOther(Stage stage) =>
        stage.Characteristics.Where(c => !c.Entered && HowComputed(c.Name) is null).Select(c => StageTexts.MethodDoesNotCompute(c.Name));

    /// <summary>The computed values that the stage has a characteristic for; a method may know more than a route asks for.</summary>
    protected static IReadOnlyList<ComputedValue> Wanted(Stage stage, params IEnumerable<ComputedValue?> values) =>
        [.. values.OfType<ComputedValue>().Where(v => stage.Characteristic(v.Characteristic) is { Entered: false })];

    /// <summary>
    /// The outcome, unless something that the stage requires could not be computed and nothing failed it either: then no verdict is
    /// invented.
    /// </summary>
    protected static StageOutcome Outcome(
        Stage stage,
        IEnumerable<ComputedValue?> values,
        IReadOnlyList<StageFinding> findings,
        string? because = null
    )
    {
        var wanted = Wanted(stage, values);
        var missing = stage
            .Characteristics.Where(c => c is { Entered: false, Required: true } && wanted.All(v => v.Characteristic != c.Name))
            .Select(c => c.Label)
            .ToList();
        return missing.Count == 0 || findings.Any(f => f.Fails)
            ? new(wanted, findings)
            : StageOutcome.CannotJudge(
                StageTexts.NothingCanBeSaidOf(string.Join("', '", missing), because ?? StageTexts.CheckThemAndTheirUnits)
            );
    }

    /// <summary>A problem text for every named entered characteristic that the stage lacks.</summary>
    protected static IEnumerable<string> NeedsEntered(Stage stage, params IEnumerable<string> names) =>
        names.Where(n => stage.Characteristic(n) is not { Entered: true, Required: true }).Select(n => StageTexts.MethodReads(n));
}

/// <summary>What a method is given.</summary>
/// <param name="Stage">The stage with its limits and parameters.</param>
/// <param name="Entered">Values entered in this attempt, by characteristic; corrections applied.</param>
/// <param name="Evidence">The files of this attempt, or of its load; the latest under each name.</param>
/// <param name="OpenedAt">When the attempt began; UTC.</param>
/// <param name="ClosedAt">When it ends; UTC.</param>
/// <param name="Earlier">The counting value of a characteristic from an earlier stage of the same part, or null.</param>
public sealed record StageInput(
    Stage Stage,
    IReadOnlyDictionary<string, decimal> Entered,
    IReadOnlyList<EvidenceFile> Evidence,
    DateTimeOffset OpenedAt,
    DateTimeOffset ClosedAt,
    Func<string, decimal?> Earlier
)
{
    /// <summary>Which attempt at the stage this is, from 1.</summary>
    public int AttemptNumber { get; init; } = 1;

    /// <summary>Names of the entered values that are only bounds from below (">400").</summary>
    public IReadOnlySet<string> LowerBounds { get; init; } = new HashSet<string>();

    /// <summary>When the entered values were read; UTC. What was recorded in one go bears the moment at which the attempt began.</summary>
    public IReadOnlyDictionary<string, DateTimeOffset> ReadAt { get; init; } = new Dictionary<string, DateTimeOffset>();

    /// <summary>What is fitted in the part, by position; only for methods with <see cref="StageMethod.ReadsInside"/>.</summary>
    public IReadOnlyDictionary<string, Input> Inside { get; init; } = new Dictionary<string, Input>();

    /// <summary>The instruments used, with the constants of the calibration then in force.</summary>
    public IReadOnlyList<InstrumentInUse> Instruments { get; init; } = [];

    /// <summary>The film lot fitted in the part, or null.</summary>
    public Lot? Film => Inside.Values.OfType<LotInput>().Select(l => l.Lot).FirstOrDefault(l => l.Kind == Lot.FilmKind);

    /// <summary>The entered value, or null when it was left open.</summary>
    public decimal? Value(string characteristic) => Entered.TryGetValue(characteristic, out var value) ? value : null;

    /// <summary>A number of the route, or null.</summary>
    /// <exception cref="InvalidOperationException">The stage's method does not say that it reads that number.</exception>
    public decimal? Number(string name) =>
        StageMethods.Find(Stage.Method) is { } method && !method.ReadsNumbers.Contains(name) && !method.ReadsSignedNumbers.Contains(name)
            ? throw new InvalidOperationException($"method {method.Name} does not say that it reads the number '{name}'")
        : Stage.Parameters.Numbers.TryGetValue(name, out var value) ? value
        : null;

    /// <summary>A constant of the calibration of an instrument in use, else the route's number of the same name, or null.</summary>
    public decimal? Constant(string name) =>
        Instruments.Select(i => i.Constants.TryGetValue(name, out var value) ? value : (decimal?)null).FirstOrDefault(v => v is not null)
        ?? Number(name);

    /// <summary>The file under that name, or null.</summary>
    public EvidenceFile? File(string name) => Evidence.LastOrDefault(e => e.Name == name);
}

/// <summary>An instrument used in an attempt, with the named constants of the calibration then in force.</summary>
public sealed record InstrumentInUse(string Code, string Kind, IReadOnlyDictionary<string, decimal> Constants);

/// <summary>A stored file with its bytes.</summary>
public sealed record EvidenceFile(Guid Id, string Name, string Kind, ReadOnlyMemory<byte> Bytes, decimal? FullScaleV);

/// <summary>A value that a method computed, with the digits to show and the evidence it came from.</summary>
public sealed record ComputedValue(string Characteristic, decimal Value, string Digits, Guid? EvidenceId)
{
    /// <summary>A value with so many decimals; null when it is no finite number that a decimal holds, and nothing is then stated.</summary>
    public static ComputedValue? Of(string characteristic, double? value, int decimals, Guid? evidenceId = null)
    {
        if (value is not { } number || !double.IsFinite(number) || Math.Abs(number) > 1e15)
        {
            return null;
        }

        var rounded = Math.Round((decimal)number, decimals, MidpointRounding.AwayFromZero);
        return new(
            characteristic,
            rounded,
            rounded.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture),
            evidenceId
        );
    }
}

/// <summary>Something a method found, in words for the builder; it may fail the attempt.</summary>
public sealed record StageFinding(string Text, bool Fails);

/// <summary>What a method arrived at. When <c>Unreadable</c> is set, no verdict can be given and the words say why.</summary>
public sealed record StageOutcome(IReadOnlyList<ComputedValue> Computed, IReadOnlyList<StageFinding> Findings, string? Unreadable = null)
{
    /// <summary>
    /// The moment from which later waits and windows count, where the evidence shows it; UTC. Null where they count from the closing.
    /// </summary>
    public DateTimeOffset? CountsFrom { get; init; }

    /// <summary>Nothing computed, nothing found.</summary>
    public static readonly StageOutcome Nothing = new([], []);

    /// <summary>The evidence cannot be judged.</summary>
    public static StageOutcome CannotJudge(string why) => new([], [], why);
}
