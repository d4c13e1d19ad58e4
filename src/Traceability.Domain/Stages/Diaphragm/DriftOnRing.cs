using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>
/// Resonance on the ring: tension and stress there, and the drift against what the reading in the jig let expect. A film that gave way in
/// the glue line, crept or cured badly shows as a negative drift.
/// </summary>
/// <remarks>
/// Entered: <c>ringResonanceHz</c>, <c>ringTemperatureC</c>, <c>ringHumidityPct</c>, <c>ringPressureHpa</c>; from the tuning stage
/// <c>jigResonanceHz</c> with its air, and <c>jigTensionNm</c>, which was computed with the air load of the bench that tuned it. Each
/// reading is taken with the air of its own moment and the air load of its own bench. Sources and checks: <see cref="RingExpectation"/>,
/// published values A6; <c>RingDriftTests</c>.
/// </remarks>
public sealed class DriftOnRing : StageMethod
{
    private const string Resonance = "ringResonanceHz";
    private static readonly string[] Air = ["ringTemperatureC", "ringHumidityPct", "ringPressureHpa"];
    private const string JigResonance = "jigResonanceHz";
    private const string JigTension = "jigTensionNm";
    private static readonly string[] JigAir = ["tuneTemperatureC", "tuneHumidityPct", "tunePressureHpa"];

    private static readonly string[] Radii = ["jigRadiusMm", "ringRadiusMm"];

    private const string Tension = "ringTensionNm";
    private const string Stress = "ringStressMpa";
    private const string Strain = "ringStrainPct";
    private const string Uncertainty = "ringTensionUncertaintyPct";
    private const string Expected = "expectedRingHz";
    private const string Drift = "driftPct";

    /// <inheritdoc/>
    public override string Name => "ring-drift";

    /// <inheritdoc/>
    public override int Version => 2;

    /// <inheritdoc/>
    public override MethodDescription Description { get; } =
        new(
            "Resonance on the ring: tension and stress there, and the drift against what the reading in the jig let expect. A film"
                + " that gave way"
                + " in the glue line, crept or cured badly shows as a negative drift.",
            [Resonance, .. Air],
            4,
            [
                new(Tension, "N/m") { Required = true },
                new(Stress, "MPa"),
                new(Strain, "pct"),
                new(Uncertainty, "pct"),
                new(Expected, "Hz"),
                new(Drift, "pct") { Required = true },
            ],
            [],
            TunedFilm.Sources
        );

    /// <inheritdoc/>
    public override IReadOnlyList<MethodParameter> Parameters { get; } = TunedFilm.Parameters;

    /// <inheritdoc/>
    public override bool ReadsInside => true;

    /// <inheritdoc/>
    public override bool ReadsCalibrations => true;

    /// <inheritdoc/>
    public override IReadOnlyList<string> ReadsEarlier => [JigResonance, JigTension, .. JigAir];

    /// <inheritdoc/>
    public override IEnumerable<string> ProblemsWith(Stage stage) =>
        [
            .. NeedsEntered(stage, [Resonance, .. Air]),
            .. NeedsComputed(stage, Tension, Drift),
            .. NeedsNumbers(stage, Radii),
            .. TunedFilm.ProblemsWith(stage),
            .. ComputesNoOther(stage),
        ];

    /// <inheritdoc/>
    public override string? HowComputed(string characteristic) =>
        characteristic switch
        {
            Tension => TensionWords.Tension,
            Stress => TensionWords.Stress,
            Strain => TensionWords.Strain,
            Uncertainty => TensionWords.Uncertainty,
            Expected =>
                "the resonance that the jig's tension gives on the ring's radius, in the air of this reading: f1 (a1/a2) sqrt((sigma +"
                    + " G1 rho1 a1)/(sigma + G2 rho2 a2)), 1 = jig, 2 = ring. Source: from the membrane equation with co-moving air.",
            Drift => "measured over expected less one, in percent. Below zero the film gave way after tuning: slip in the glue line, creep,"
                + " a bad cure. The workshop's own definition.",
            _ => null,
        };

    /// <inheritdoc/>
    protected override StageOutcome Compute(StageInput input)
    {
        var measured = input.Entered[Resonance];
        if (measured <= 0 || input.Earlier(JigResonance) is not { } tuned || tuned <= 0)
        {
            return StageOutcome.CannotJudge(
                measured <= 0 ? TensionTexts.ResonanceGivesNoTension(measured) : TensionTexts.NoReadingInTheJig
            );
        }

        if (TunedFilm.Of(input) is not { } film)
        {
            return StageOutcome.CannotJudge(TensionTexts.NoFilmThickness);
        }

        if (
            TunedFilm.AirDensityOf(input.Value(Air[0]), input.Value(Air[1]), input.Value(Air[2])) is not { } air
            || TunedFilm.AirDensityOf(input.Earlier(JigAir[0]), input.Earlier(JigAir[1]), input.Earlier(JigAir[2])) is not { } jigAir
        )
        {
            return StageOutcome.CannotJudge(TensionTexts.AirHereOrAtTuningIsNoRoomAir);
        }

        var (jig, ring) = ((double)input.Number("jigRadiusMm")! * 1e-3, (double)input.Number("ringRadiusMm")! * 1e-3);
        var load = TunedFilm.AirLoadOf(input);
        var tension = MembraneTension.FromResonanceInAir((double)measured, ring, film.ArealDensityKgPerM2, air, load);
        var tuning = input.Earlier(JigTension) is { } recorded and > 0
            ? (double)recorded
            : MembraneTension.FromResonanceInAir((double)tuned, jig, film.ArealDensityKgPerM2, jigAir, load);
        var expected = MembraneModes.FundamentalInAirHz(ring, tuning, film.ArealDensityKgPerM2, air, load);
        return Outcome(
            input.Stage,
            [
                ComputedValue.Of(Tension, tension, 2),
                ComputedValue.Of(Stress, MembraneTension.StressPa(tension, film.BaseThicknessM) / 1e6, 2),
                ComputedValue.Of(Strain, film.StrainPct(tension), 3),
                ComputedValue.Of(Uncertainty, film.ExpandedUncertaintyPct(input, ring, air, load), 1),
                ComputedValue.Of(Expected, expected, 0),
                ComputedValue.Of(Drift, 100 * RingExpectation.RelativeDrift((double)measured, expected), 2),
            ],
            [
                .. film.NearYield(input, tension),
                .. film.SinceTuning(
                    tension,
                    (double)(input.Entered[Air[0]] - input.Earlier(JigAir[0])!.Value),
                    (double)(input.Entered[Air[1]] - input.Earlier(JigAir[1])!.Value)
                ),
            ]
        );
    }
}
