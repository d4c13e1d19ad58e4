using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>
/// Fine tuning: tension and stress of the film from its resonance in the jig, with the air that moves along, and what the resonance should
/// read once the film is on its ring.
/// </summary>
/// <remarks>
/// Entered: <c>jigResonanceHz</c>, <c>tuneTemperatureC</c>, <c>tuneHumidityPct</c>, <c>tunePressureHpa</c>. Film from the fitted lot. Route
/// numbers: <c>jigRadiusMm</c>, <c>ringRadiusMm</c>; <c>airLoadCoefficient</c> from the bench's calibration, else the route, else
/// <see cref="AirLoad.UncalibratedFixture"/>. Sources and checks: <see cref="MembraneTension"/>, <see cref="RingExpectation"/>, published
/// values A2, A5, A6, F19; <c>JigTensionTests</c>.
/// </remarks>
public sealed class TensionInJig : StageMethod
{
    private const string Resonance = "jigResonanceHz";
    private static readonly string[] Air = ["tuneTemperatureC", "tuneHumidityPct", "tunePressureHpa"];

    private static readonly string[] Radii = ["jigRadiusMm", "ringRadiusMm"];

    private const string Tension = "jigTensionNm";
    private const string Stress = "jigStressMpa";
    private const string Strain = "jigStrainPct";
    private const string Uncertainty = "jigTensionUncertaintyPct";
    private const string OnRing = "expectedOnRingHz";

    /// <inheritdoc/>
    public override string Name => "jig-tension";

    /// <inheritdoc/>
    public override int Version => 1;

    /// <inheritdoc/>
    public override MethodDescription Description { get; } =
        new(
            "Fine tuning: tension and stress of the film from its resonance in the jig, with the air that moves along, and what"
                + " the resonance"
                + " should read once the film is on its ring. The film's layers are those of the fitted film lot.",
            [Resonance, .. Air],
            4,
            [new(Tension, "N/m") { Required = true }, new(Stress, "MPa"), new(Strain, "pct"), new(Uncertainty, "pct"), new(OnRing, "Hz")],
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
    public override IEnumerable<string> ProblemsWith(Stage stage) =>
        [
            .. NeedsEntered(stage, [Resonance, .. Air]),
            .. NeedsComputed(stage, Tension),
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
            OnRing => "the resonance of the same tension on the ring's radius, its own air load included: f (a1/a2) sqrt((sigma + G rho"
                + " a1)/(sigma + G rho a2)). Source: from the membrane equation with co-moving air.",
            _ => null,
        };

    /// <inheritdoc/>
    protected override StageOutcome Compute(StageInput input)
    {
        var resonance = input.Entered[Resonance];
        if (resonance <= 0)
        {
            return StageOutcome.CannotJudge(TensionTexts.ResonanceGivesNoTension(resonance));
        }

        if (TunedFilm.Of(input) is not { } film)
        {
            return StageOutcome.CannotJudge(TensionTexts.NoFilmThickness);
        }

        if (TunedFilm.AirDensityOf(input.Value(Air[0]), input.Value(Air[1]), input.Value(Air[2])) is not { } air)
        {
            return StageOutcome.CannotJudge(TensionTexts.AirIsNoRoomAir);
        }

        var (jig, ring) = ((double)input.Number("jigRadiusMm")! * 1e-3, (double)input.Number("ringRadiusMm")! * 1e-3);
        var load = TunedFilm.AirLoadOf(input);
        var tension = MembraneTension.FromResonanceInAir((double)resonance, jig, film.ArealDensityKgPerM2, air, load);
        var expected = RingExpectation.InSameMountingHz((double)resonance, jig, ring, film.ArealDensityKgPerM2, air, load);
        return Outcome(
            input.Stage,
            [
                ComputedValue.Of(Tension, tension, 2),
                ComputedValue.Of(Stress, MembraneTension.StressPa(tension, film.BaseThicknessM) / 1e6, 2),
                ComputedValue.Of(Strain, film.StrainPct(tension), 3),
                ComputedValue.Of(Uncertainty, film.ExpandedUncertaintyPct(input, jig, air, load), 1),
                ComputedValue.Of(OnRing, expected, 0),
            ],
            [.. film.NearYield(input, tension), film.InOtherAir(tension)]
        );
    }
}
