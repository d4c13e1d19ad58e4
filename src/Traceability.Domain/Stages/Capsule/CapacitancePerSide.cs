using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.Capsule;

/// <summary>
/// Capacitance of the side or sides of a capsule, and what it says of the stack: the real gap, front against rear, the voltage at which the
/// film would fall onto the electrode and how far the polarising voltage stays below it, the resonance under voltage, and the low corner.
/// </summary>
/// <remarks>
/// Entered: <c>capacitancePf</c> (one side), or <c>capacitanceFrontPf</c> and <c>capacitanceRearPf</c>. Tension and resonance are the
/// fitted diaphragms' own. Route numbers: <c>ringRadiusMm</c>, <c>effectiveAreaPct</c>, <c>polarisingVoltageV</c>, <c>biasResistorGohm</c>;
/// <c>strayCapacitancePf</c> from the meter's calibration, else the route. What a route has no characteristic for is not stated. Sources
/// and checks: <see cref="CapsuleCapacitance"/>, <see cref="PullIn"/>, <see cref="SpringSoftening"/>, <see cref="LowCorner"/>, published
/// values B1 to B5; <c>CapsuleMethodTests</c>.
/// </remarks>
public sealed class CapacitancePerSide : StageMethod
{
    private const string Asymmetry = "asymmetryPct";
    private const string ResonanceDifference = "resonanceDifferenceHz";
    private const string TensionDifference = "tensionDifferencePct";

    private static readonly CapsuleSide Single = new("", "diaphragm");
    private static readonly CapsuleSide[] Dual = [new("Front", "front-diaphragm"), new("Rear", "rear-diaphragm")];

    /// <inheritdoc/>
    public override string Name => "capacitance";

    /// <inheritdoc/>
    public override int Version => 3;

    /// <inheritdoc/>
    public override MethodDescription Description { get; } =
        new(
            "Capacitance of the one side of a capsule, or of front and rear, and what it says of the stack: the real gap, the"
                + " voltage at which"
                + " the film would fall onto the electrode, the resonance under voltage, the low corner. Tension and resonance are those"
                + " of the"
                + " fitted diaphragms. Of two sides, front and rear are compared.",
            [Single.Capacitance, .. Dual.Select(s => s.Capacitance)],
            0,
            [
                new(Asymmetry, "pct"),
                new(ResonanceDifference, "Hz"),
                new(TensionDifference, "pct"),
                new("gap{side}Um", "um"),
                new("pullIn{side}V", "V"),
                new("pullInMargin{side}", "ratio"),
                new("polarisedResonance{side}Hz", "Hz"),
                new("lowCorner{side}Hz", "Hz"),
            ],
            [],
            [
                "Gap: parallel-plate capacitor, fringe field left out.",
                "Pull-in and resonance under voltage: Pelesko and Bernstein, Modeling MEMS and NEMS, from memory.",
                "Low corner: first-order high-pass.",
            ]
        );

    /// <inheritdoc/>
    public override IReadOnlyList<MethodParameter> Parameters { get; } =
    [
        new("ringRadiusMm", "mm", "Inner radius of the ring; needed for gap and pull-in."),
        new("effectiveAreaPct", "%", "Share of the electrode that is not drilled away; needed for gap and pull-in.") { Upper = 100 },
        new("strayCapacitancePf", "pF", "Capacitance of leads and fixture; from the meter's calibration, else this, else 0."),
        new("polarisingVoltageV", "V", "Polarising voltage; needed for pull-in margin and resonance under voltage."),
        new("biasResistorGohm", "GΩ", "Bias resistor; needed for the low corner."),
    ];

    /// <inheritdoc/>
    public override bool ReadsInside => true;

    /// <inheritdoc/>
    public override bool ReadsCalibrations => true;

    /// <inheritdoc/>
    public override IReadOnlyList<string> ReadsOfFittedParts => [CapsuleSide.Tension, CapsuleSide.Resonance];

    /// <inheritdoc/>
    public override IEnumerable<string> ProblemsWith(Stage stage) =>
        [
            .. SidesOf(stage).Count == 1
                ? NeedsEntered(stage, Single.Capacitance)
                : [.. NeedsEntered(stage, Dual.Select(s => s.Capacitance)), .. NeedsComputed(stage, Asymmetry)],
            .. NeedsNumbers(stage, SidesOf(stage).SelectMany(s => s.NumbersFor(stage)).Distinct()),
            .. stage.Parameters.Numbers.TryGetValue("effectiveAreaPct", out var share) && share > 100
                ? new[] { CapsuleTexts.EffectiveAreaIsAtMost }
                : [],
            .. ComputesNoOther(stage),
        ];

    /// <inheritdoc/>
    public override string? HowComputed(string characteristic) =>
        characteristic switch
        {
            Asymmetry => "100 |C front - C rear| / mean: a bad stack shows here first (common practice, no source).",
            ResonanceDifference =>
                "|f front - f rear| of the two diaphragms on their rings. How near they must be is common practice, no source.",
            TensionDifference =>
                "100 |T front - T rear| / mean of the two diaphragms on their rings. How near they must be is common practice, no source.",
            _ => CapsuleSide.HowComputed(characteristic),
        };

    /// <inheritdoc/>
    protected override StageOutcome Compute(StageInput input)
    {
        var sides = SidesOf(input.Stage);
        var stray = input.Constant("strayCapacitancePf") ?? 0;
        if (sides.FirstOrDefault(s => input.Entered[s.Capacitance] <= 0 || input.Entered[s.Capacitance] <= stray) is { } wrong)
        {
            return StageOutcome.CannotJudge(CapsuleTexts.CapacitanceCannotBe(input.Entered[wrong.Capacitance], stray));
        }

        return Outcome(
            input.Stage,
            [.. sides.SelectMany(s => s.Values(input)), .. sides.Count == 2 ? Pair(input) : []],
            [.. sides.SelectMany(s => s.Findings(input)), .. Lots(input)],
            string.Join(
                ", ",
                sides.Select(s => s.LacksOnRecord(input)).OfType<string>().DefaultIfEmpty(CapsuleTexts.CheckThemAndTheirUnits)
            )
        );
    }

    private static IReadOnlyList<CapsuleSide> SidesOf(Stage stage) => stage.Characteristic(Single.Capacitance) is null ? Dual : [Single];

    private static IEnumerable<ComputedValue?> Pair(StageInput input)
    {
        yield return ComputedValue.Of(
            Asymmetry,
            100
                * Math.Abs(
                    CapsuleCapacitance.Asymmetry((double)input.Entered[Dual[0].Capacitance], (double)input.Entered[Dual[1].Capacitance])
                ),
            2
        );
        if (Dual[0].Of(input, CapsuleSide.Resonance) is { } front && Dual[1].Of(input, CapsuleSide.Resonance) is { } rear)
        {
            yield return ComputedValue.Of(ResonanceDifference, (double)Math.Abs(front - rear), 1);
        }

        if (
            Dual[0].Of(input, CapsuleSide.Tension) is { } frontTension
            && Dual[1].Of(input, CapsuleSide.Tension) is { } rearTension
            && frontTension + rearTension > 0
        )
        {
            yield return ComputedValue.Of(
                TensionDifference,
                200 * (double)(Math.Abs(frontTension - rearTension) / (frontTension + rearTension)),
                1
            );
        }
    }

    private static IEnumerable<StageFinding> Lots(StageInput input)
    {
        var lots = Dual.Select(s => input.Inside.GetValueOrDefault(s.Position))
            .OfType<FittedPart>()
            .Select(p => p.FilmLotId)
            .Distinct()
            .ToList();
        return lots.Count > 1 ? [new(CapsuleTexts.FrontAndRearAreOfDifferentFilmLots, false)] : [];
    }
}
