using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.InsulationTest;

/// <summary>
/// The highest voltage that may stand between film and backplate of one capsule in an insulation test: its own pull-in voltage over a
/// factor. Above pull-in the film lies on the backplate, and the test measures that.
/// </summary>
/// <param name="PullInV">Pull-in voltage of this capsule, V; of a dual capsule that of the lower side. Null when it is not known of every
/// side.</param>
/// <param name="Factor">Pull-in voltage over the highest permitted one, without unit (route number <c>pullInFactor</c>).</param>
/// <remarks>
/// The pull-in voltage is that computed from capacitance and tension at the capsule's own stage (<see cref="Capsule.PullIn"/>). 1.25 keeps
/// the voltage at 80 % of it, the distance that the polarising voltage keeps too (common practice, no source). Checks:
/// <c>TestVoltageTests</c>.
/// </remarks>
public sealed record PermittedVoltage(decimal? PullInV, decimal Factor)
{
    /// <summary>The route's number.</summary>
    public const string FactorNumber = "pullInFactor";

    /// <summary>The factor of routes that were loaded before they had to state one.</summary>
    public const decimal UsualFactor = 1.25m;

    /// <summary>The characteristic that holds the voltage in the methods of the insulation test.</summary>
    public const string TestVoltage = "testVoltageV";

    private const string Single = "pullInV";
    private const string Front = "pullInFrontV";
    private const string Rear = "pullInRearV";

    /// <summary>What the capsule's own stage computed: of its one side, or of front and rear.</summary>
    public static readonly IReadOnlyList<string> ReadsEarlier = [Single, Front, Rear];

    /// <summary>The highest permitted voltage, V, to the tenth below; null when it is not known.</summary>
    public decimal? Volts => PullInV is { } pullIn ? Math.Floor(10 * pullIn / Factor) / 10 : null;

    /// <summary>That of one capsule at a stage.</summary>
    /// <param name="stage">The stage, which states the factor.</param>
    /// <param name="earlier">The counting value of a characteristic of an earlier stage of the same capsule, or null.</param>
    public static PermittedVoltage At(Stage stage, Func<string, decimal?> earlier)
    {
        var (single, front, rear) = (earlier(Single), earlier(Front), earlier(Rear));
        decimal?[] sides = front is null && rear is null ? [single] : [front, rear];
        var stated = stage.Parameters.Numbers.TryGetValue(FactorNumber, out var factor) && factor > 0;
        return new(sides.Contains(null) ? null : sides.Min(), stated ? factor : UsualFactor);
    }

    /// <summary>
    /// The voltages of a stage that stand across a gap, by characteristic. A stage that does not say what is tied is taken to put its test
    /// voltage there.
    /// </summary>
    /// <param name="stage">The stage.</param>
    /// <param name="testsWithVoltage">True when its method is one of a test with a voltage.</param>
    public static IReadOnlyList<string> AcrossTheGap(Stage stage, bool testsWithVoltage) =>
        stage.Parameters.Terminals is { Count: > 0 } terminals
            ? [.. terminals.Where(t => t.CrossesAGap()).Select(t => t.Voltage).Distinct()]
        : testsWithVoltage ? [TestVoltage]
        : [];

    /// <summary>Why such a voltage is not put on this capsule; null when it may be.</summary>
    public string? ProblemWith(decimal voltageV) =>
        this switch
        {
            { Volts: null } => InsulationTexts.PullInIsNotKnown,
            { Volts: { } highest } when voltageV > highest => InsulationTexts.VoltageIsTooHigh(voltageV, highest, PullInV, Factor),
            _ => null,
        };

    /// <summary>The highest permitted voltage with its reason, for people; says so when it is not known.</summary>
    public string InWords =>
        Volts is { } highest ? InsulationTexts.VoltageAtMost(highest, PullInV, Factor) : InsulationTexts.PullInIsNotKnown;

    /// <summary>What a method finds: a voltage above the permitted one fails the test, one that cannot be compared is said.</summary>
    internal static IEnumerable<StageFinding> Findings(StageInput input)
    {
        var permitted = At(input.Stage, input.Earlier);
        return from name in AcrossTheGap(input.Stage, input.Method is { TestsWithVoltage: true })
            let voltage = input.Value(name)
            where voltage is not null
            let problem = permitted.ProblemWith(voltage.Value)
            where problem is not null
            select new StageFinding(problem, permitted.Volts is not null);
    }
}
