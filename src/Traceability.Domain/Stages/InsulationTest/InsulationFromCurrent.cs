using System.Globalization;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.InsulationTest;

/// <summary>
/// Insulation from test voltage and leakage current: R = V / I, less the protection resistor in series, with the leakage of the empty
/// fixture taken off in parallel. Below the tester's floor the result is "greater than", and stays so.
/// </summary>
/// <remarks>
/// Entered: <c>testVoltageV</c>, and <c>currentAt15sPicoampere</c>, <c>currentAt60sPicoampere</c> in pA. Constants, from the tester's
/// calibration or else the route: <c>seriesResistanceMohm</c>, <c>fixtureResistanceGohm</c>, <c>currentFloorPicoampere</c>; one left out
/// corrects nothing. Sources and checks: <see cref="InsulationResistance"/>, published values C1, C5, C7; <c>InsulationMethodTests</c>.
/// </remarks>
public sealed class InsulationFromCurrent : StageMethod
{
    private const string Voltage = PermittedVoltage.TestVoltage;
    private const string CurrentAt15S = "currentAt15sPicoampere";
    private const string CurrentAt60S = "currentAt60sPicoampere";
    private const string At15S = "insulationAt15sGohm";
    private const string At60S = "insulationAt60sGohm";
    private const string Ratio = "insulationRatio";
    private const string Series = "seriesResistanceMohm";
    private const string Fixture = "fixtureResistanceGohm";
    private const string Floor = "currentFloorPicoampere";

    /// <inheritdoc/>
    public override string Name => "insulation-from-current";

    /// <inheritdoc/>
    public override int Version => 3;

    /// <inheritdoc/>
    public override bool TestsWithVoltage => true;

    /// <inheritdoc/>
    public override MethodDescription Description { get; } =
        new(
            "Insulation of a capsule from test voltage and leakage current: R = V / I, less the resistor in series, with the"
                + " leakage of the empty"
                + " fixture taken off. Below the tester's floor the result is \"greater than\".",
            [Voltage, CurrentAt15S, CurrentAt60S, Electrification.Entered],
            3,
            [
                new(At15S, "GOhm") { Required = true },
                new(At60S, "GOhm") { Required = true },
                new(Ratio, "ratio"),
                .. LeakageConsequence.Values,
            ],
            [],
            ["Ohm's law; resistors in series and in parallel.", .. TestTerminalRules.Sources, .. LeakageConsequence.Sources]
        );

    /// <inheritdoc/>
    public override IReadOnlyList<MethodParameter> Parameters { get; } =
    [
        new(
            Series,
            "MΩ",
            "Protection resistor in series; from the tester's calibration, else this; nothing is taken off when neither says."
        ),
        new(Fixture, "GΩ", "Resistance of the empty fixture; from the tester's calibration, else this; nothing is taken off otherwise."),
        new(Floor, "pA", "The least current that the tester shows; from its calibration, else this; 0 when neither says."),
        .. TestTerminalRules.Parameters,
    ];

    /// <inheritdoc/>
    public override bool ReadsCalibrations => true;

    /// <inheritdoc/>
    public override IReadOnlyList<string> ReadsEarlier => [.. LeakageConsequence.ReadsEarlier, .. PermittedVoltage.ReadsEarlier];

    /// <inheritdoc/>
    public override IEnumerable<string> ProblemsWith(Stage stage) =>
        [
            .. NeedsEntered(stage, Voltage, CurrentAt15S, CurrentAt60S),
            .. NeedsComputed(stage, At15S, At60S),
            .. NeedsNumbers(stage, PermittedVoltage.FactorNumber),
            .. TestTerminalRules.ProblemsWith(stage),
            .. ComputesNoOther(stage),
        ];

    /// <inheritdoc/>
    public override string? HowComputed(string characteristic) =>
        characteristic switch
        {
            At15S or At60S =>
                "V / I (Ohm's law), less the series resistor (seriesResistanceMohm), then 1 / (1/R - 1/Rf) with the empty fixture's"
                    + " resistance Rf (fixtureResistanceGohm). At or below the tester's floor (currentFloorPicoampere) it is only known"
                    + " to be greater. Source: Ohm's law, and resistors in series and in parallel.",
            Ratio => "R(60 s) / R(15 s) at one voltage; not stated when either is only known to be greater than its value. Below 1 the"
                + " reading fell, a sign of moisture or contamination (common practice, no source).",
            _ => LeakageConsequence.HowComputed(characteristic),
        };

    /// <inheritdoc/>
    protected override StageOutcome Compute(StageInput input)
    {
        var (voltage, early, late) = (input.Entered[Voltage], input.Entered[CurrentAt15S], input.Entered[CurrentAt60S]);
        var floor = input.Constant(Floor) ?? 0;
        if (voltage <= 0)
        {
            return StageOutcome.CannotJudge(InsulationTexts.TestVoltageGivesNoResistance(voltage));
        }

        if (early < 0 || late < 0 || (floor <= 0 && (early == 0 || late == 0)))
        {
            return StageOutcome.CannotJudge(InsulationTexts.CurrentsGiveNoResistance(early, late));
        }

        if (Electrification.ProblemWith(input) is { } tooEarly)
        {
            return StageOutcome.CannotJudge(tooEarly);
        }

        var (at15, at60) = (Resistance(input, voltage, early, floor), Resistance(input, voltage, late, floor));
        var ratio = InsulationRatios.LateOverEarly(at15, at60);
        List<StageFinding> findings = [.. PermittedVoltage.Findings(input), .. Electrification.Findings(input, CurrentAt60S)];
        if (ratio < 1)
        {
            findings.Add(new(InsulationTexts.ResistanceFell, false));
        }

        if (input.Constant(Fixture) is { } fixture and > 0 && !at60.FixtureIsGoodEnough((double)fixture * 1e9))
        {
            findings.Add(new(InsulationTexts.EmptyFixtureIsTooPoor(fixture), false));
        }

        if (input.AttemptNumber > 1)
        {
            findings.Add(InsulationValues.AfterCleanings(input.AttemptNumber));
        }

        return new(
            Wanted(
                input.Stage,
                [Stated(At15S, at15), Stated(At60S, at60), ComputedValue.Of(Ratio, ratio, 3), .. LeakageConsequence.Of(input, at60)]
            ),
            findings
        );
    }

    private static InsulationResistance Resistance(StageInput input, decimal voltage, decimal picoampere, decimal floorPicoampere)
    {
        var resistance = InsulationResistance
            .FromVoltageAndCurrent((double)voltage, (double)picoampere * 1e-12, (double)floorPicoampere * 1e-12)
            .WithoutSeries((double)Math.Max(0, input.Constant(Series) ?? 0) * 1e6);
        return input.Constant(Fixture) is { } fixture and > 0 ? resistance.WithoutFixture((double)fixture * 1e9) : resistance;
    }

    private static ComputedValue? Stated(string name, InsulationResistance resistance) =>
        ComputedValue.Of(name, resistance.Ohm / 1e9, 1) is { } value
            ? resistance.IsGreaterThan
                ? value with
                {
                    Digits = ">" + value.Value.ToString("0.0", CultureInfo.InvariantCulture),
                }
                : value
            : null;
}
