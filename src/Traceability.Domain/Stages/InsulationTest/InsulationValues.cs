using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.InsulationTest;

/// <summary>
/// Insulation between the two sides of a capsule and from each side to the body, as the tester shows it, straight after the humid soak.
/// The limits judge the resistances; this method adds how the reading moved while the voltage stayed on and what
/// the leakage would do to sensitivity and low corner. A voltage across the gap above the permitted one fails the test
/// (<see cref="PermittedVoltage"/>).
/// </summary>
/// <remarks>
/// A resistance may be entered as "greater than" (<c>>400</c>): then it can meet its limit, and no ratio is made of it. A route that states
/// only a current uses <see cref="InsulationFromCurrent"/>. Checks: published values C2, B6; <c>InsulationMethodTests</c>.
/// </remarks>
public sealed class InsulationValues : StageMethod
{
    /// <summary>
    /// Far above any ratio ever seen (common practice, no source); beyond it the unit was mistaken, and the quotient may be too large for a
    /// decimal.
    /// </summary>
    private const decimal HighestBelievedRatio = 1e6m;

    private const string At15S = "insulationAt15sGohm";
    private const string At60S = "insulationAt60sGohm";
    private const string Ratio = "insulationRatio";

    /// <inheritdoc/>
    public override string Name => "insulation";

    /// <inheritdoc/>
    public override int Version => 4;

    /// <inheritdoc/>
    public override bool TestsWithVoltage => true;

    /// <inheritdoc/>
    public override MethodDescription Description { get; } =
        new(
            "Insulation of a capsule as the tester shows it, straight after the humid soak: how the reading moved while the"
                + " voltage stayed on,"
                + " and what the leakage would do to sensitivity and low corner. Each capsule's own pull-in voltage bounds the test"
                + " voltage.",
            [At15S, At60S, PermittedVoltage.TestVoltage, Electrification.Entered],
            2,
            [new(Ratio, "ratio") { Required = true }, .. LeakageConsequence.Values],
            [],
            [.. TestTerminalRules.Sources, .. LeakageConsequence.Sources]
        );

    /// <inheritdoc/>
    public override IReadOnlyList<MethodParameter> Parameters { get; } = [.. TestTerminalRules.Parameters];

    /// <inheritdoc/>
    public override IReadOnlyList<string> ReadsEarlier => [.. LeakageConsequence.ReadsEarlier, .. PermittedVoltage.ReadsEarlier];

    /// <inheritdoc/>
    public override IEnumerable<string> ProblemsWith(Stage stage) =>
        [
            .. NeedsEntered(stage, At15S, At60S),
            .. NeedsComputed(stage, Ratio),
            .. NeedsNumbers(stage, PermittedVoltage.FactorNumber),
            .. TestTerminalRules.ProblemsWith(stage),
            .. ComputesNoOther(stage),
        ];

    /// <inheritdoc/>
    public override string? HowComputed(string characteristic) =>
        characteristic == Ratio
            ? "R(60 s) / R(15 s), the same voltage all the while: below 1 the reading fell, a sign of moisture or contamination (common"
                + " practice, no source)."
            : LeakageConsequence.HowComputed(characteristic);

    /// <inheritdoc/>
    protected override StageOutcome Compute(StageInput input)
    {
        if (
            input.Entered.FirstOrDefault(e => input.Stage.Characteristic(e.Key)?.Unit == "GOhm" && e.Value <= 0) is
            { Key: { } name, Value: var impossible }
        )
        {
            return StageOutcome.CannotJudge(InsulationTexts.CannotBeAResistance(name, impossible));
        }

        if (Electrification.ProblemWith(input) is { } tooEarly)
        {
            return StageOutcome.CannotJudge(tooEarly);
        }

        var (early, late) = (input.Entered[At15S], input.Entered[At60S]);
        if (late > HighestBelievedRatio * early)
        {
            return StageOutcome.CannotJudge(InsulationTexts.ReadingsCannotBelongTogether(early, late));
        }

        var bounds = input.LowerBounds.Contains(At15S) || input.LowerBounds.Contains(At60S);
        var ratio = bounds ? null : ComputedValue.Of(Ratio, (double)(late / early), 3);
        var findings = Findings(input, ratio, early, late);
        var values = Wanted(
            input.Stage,
            [ratio, .. LeakageConsequence.Of(input, new((double)late * 1e9, input.LowerBounds.Contains(At60S)))]
        );
        return new(values, findings);
    }

    private static List<StageFinding> Findings(StageInput input, ComputedValue? ratio, decimal early, decimal late)
    {
        List<StageFinding> findings = [.. PermittedVoltage.Findings(input), .. Electrification.Findings(input, At60S)];
        if (ratio?.Value < 1)
        {
            findings.Add(new(InsulationTexts.ReadingFell(early, late), false));
        }

        if (ratio is null)
        {
            findings.Add(new(InsulationTexts.NoRatioOfABound, false));
        }

        if (input.AttemptNumber > 1)
        {
            findings.Add(AfterCleanings(input.AttemptNumber));
        }

        return findings;
    }

    /// <summary>How often the part was cleaned before this test.</summary>
    internal static StageFinding AfterCleanings(int attemptNumber) =>
        new(
            attemptNumber > 2
                ? InsulationTexts.AfterCleanings(attemptNumber, attemptNumber - 1)
                : InsulationTexts.AfterOneCleaning(attemptNumber, attemptNumber - 1),
            false
        );
}
