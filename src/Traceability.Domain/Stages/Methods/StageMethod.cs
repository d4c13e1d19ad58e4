using Traceability.Domain.Routes;

namespace Traceability.Domain.Stages.Methods;

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

    /// <summary>What it is, for those who write routes.</summary>
    public abstract MethodDescription Description { get; }

    /// <summary>
    /// Everything that it reads under <c>parameters</c>, each with its unit, range and meaning. A route that states another is refused: a
    /// misspelt one would be passed over in silence. Where tolerances come from may be said at any stage.
    /// </summary>
    public virtual IReadOnlyList<MethodParameter> Parameters => [];

    /// <summary>The numbers among them that lie above zero.</summary>
    public IReadOnlyList<string> ReadsNumbers =>
        [.. Parameters.Where(p => p is { IsNumber: true, MayBeZeroOrBelow: false }).Select(p => p.Name)];

    /// <summary>The numbers among them that may also be zero or below.</summary>
    public IReadOnlyList<string> ReadsSignedNumbers =>
        [.. Parameters.Where(p => p is { IsNumber: true, MayBeZeroOrBelow: true }).Select(p => p.Name)];

    /// <summary>The other keys among them.</summary>
    public IReadOnlyList<string> ReadsParameters => [.. Parameters.Where(p => !p.IsNumber).Select(p => p.Name)];

    /// <summary>What a route stage must have for this method to work; in words, empty when all is well.</summary>
    public virtual IEnumerable<string> ProblemsWith(Stage stage) => [];

    /// <summary>What it asks of a route, for whoever reads one.</summary>
    public MethodRequirements Requirements => new(Name, ReadsNumbers, ReadsSignedNumbers, ReadsParameters, ProblemsWith);

    /// <summary>Computes and finds. Limits of characteristics are judged by the caller; findings are for everything else.</summary>
    /// <exception cref="InvalidOperationException">The method asked for a number that it does not say it reads.</exception>
    public StageOutcome Judge(StageInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        return Compute(input with { Method = this });
    }

    /// <summary>
    /// What this method computes and finds; <see cref="StageInput.Number"/> gives only the numbers that it says it reads.
    /// </summary>
    protected abstract StageOutcome Compute(StageInput input);

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
