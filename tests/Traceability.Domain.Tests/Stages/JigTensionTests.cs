using CsCheck;
using Traceability.Domain.Stages.Diaphragm;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Tests.Stages;

public class JigTensionTests
{
    private static StageInput Nominal(string model = "TARN-2") => Judging.Nominal(model, "diaphragm", "fine-tune");

    /// <summary>Dry air of 20 °C and 1013.25 hPa, 1.2041 kg/m3 (reference sheet E12-001).</summary>
    private static StageInput InDryAir(StageInput input) =>
        input.With(("tuneTemperatureC", 20), ("tuneHumidityPct", 0), ("tunePressureHpa", 1013.25m));

    /// <summary>
    /// Reference sheet A5-021: 61.7086 N/m for 1500 Hz, 13 mm, 6 um of bare PET in that air, unbaffled; the stress is T / 6 um, the strain
    /// (1 - 0.38) T / (4.5 GPa 6 um).
    /// </summary>
    [Fact]
    public void Tension_stress_and_strain_come_from_the_resonance_in_air()
    {
        var outcome = InDryAir(Nominal("TARN-1"))
            .With(("jigResonanceHz", 1500))
            .WithNumbers(("airLoadCoefficient", 0.98592632161m))
            .OfFilm(6, 0)
            .Judge();
        Assert.Equal(
            ("61.71", "10.28", "0.142"),
            (outcome.Digits("jigTensionNm"), outcome.Digits("jigStressMpa"), outcome.Digits("jigStrainPct"))
        );
    }

    /// <summary>Reference sheet A6-006: 1265.65 Hz on 12.0 mm from 1200 Hz on 12.5 mm, 6 um of PET with 50 nm of gold, unbaffled.</summary>
    [Fact]
    public void The_resonance_on_the_ring_is_predicted() =>
        Assert.Equal("1266", InDryAir(Nominal()).WithNumbers(("airLoadCoefficient", 0.98592632161m)).Judge().Digits("expectedOnRingHz"));

    [Theory]
    [InlineData("TARN-1", 1158)]
    [InlineData("TARN-2", 1266)]
    public void What_the_jig_foretells_is_what_the_ring_aims_at(string model, int nominal) =>
        Assert.InRange(Nominal(model).Judge().Value("expectedOnRingHz"), nominal - 4, nominal + 4);

    [Fact]
    public void Stress_is_judged_at_its_limits() => Nominal().JudgesAtItsLimits("jigStressMpa", 0.01m);

    [Fact]
    public void The_calibration_of_the_bench_goes_before_the_route_and_the_route_before_the_usual_value()
    {
        var (usual, route, bench) = (
            Tension(Nominal()),
            Tension(Nominal().WithNumbers(("airLoadCoefficient", 1))),
            Tension(Nominal().WithNumbers(("airLoadCoefficient", 1)).Calibrated("airLoadCoefficient", 1.4m))
        );
        Assert.True(route < usual && usual < bench, $"{route} {usual} {bench}");
        Assert.Equal(usual, Tension(Nominal().WithNumbers(("airLoadCoefficient", (decimal)AirLoad.UncalibratedFixture))));
    }

    [Fact]
    public void A_calibrated_bench_knows_the_tension_better() =>
        Assert.True(
            Nominal().Calibrated("airLoadCoefficient", 1.24m).Judge().Value("jigTensionUncertaintyPct")
                < Nominal().Judge().Value("jigTensionUncertaintyPct") / 2
        );

    /// <summary>
    /// JCGM 100, 5.1, by hand: share of the air s = 0.664; 2 sqrt((2 * 0.1)² + ((2 + s) 0.2)² + ((1 - s) 1.5)² + (s 12)² + (s 0.2)²)
    /// % = 16.0 %.
    /// </summary>
    [Fact]
    public void The_expanded_uncertainty_is_propagated() =>
        Assert.InRange(Nominal().Judge().Value("jigTensionUncertaintyPct"), 15.5m, 16.5m);

    [Fact]
    public void The_film_of_the_lot_is_taken_and_without_it_that_of_the_route()
    {
        Assert.True(Tension(Nominal().OfFilm(3, 40)) < Tension(Nominal()));
        Assert.Equal(
            Tension(Nominal().OfFilm(3, 40)),
            Tension(
                (Nominal() with { Inside = new Dictionary<string, FittedThing>() }).WithNumbers(
                    ("baseThicknessUm", 3),
                    ("metalThicknessNm", 40)
                )
            )
        );
    }

    [Fact]
    public void Without_any_thickness_nothing_is_judged() => Nominal().OfFilm(null, null).IsNotJudged("states no thickness");

    [Theory]
    [InlineData(0)]
    [InlineData(-1200)]
    public void A_resonance_that_is_none_is_not_judged(int hertz) =>
        Nominal().With(("jigResonanceHz", hertz)).IsNotJudged($"A resonance of {hertz} Hz", "above zero");

    [Theory]
    [InlineData("tuneTemperatureC", null)]
    [InlineData("tuneTemperatureC", 295)]
    [InlineData("tuneHumidityPct", null)]
    [InlineData("tuneHumidityPct", 101)]
    [InlineData("tuneHumidityPct", -1)]
    [InlineData("tunePressureHpa", null)]
    [InlineData("tunePressureHpa", 0)]
    [InlineData("tunePressureHpa", 100000)]
    public void Air_that_is_none_is_not_judged(string characteristic, int? value) =>
        Nominal().With((characteristic, value)).IsNotJudged("check their units (°C, %, hPa)");

    [Fact]
    public void A_resonance_beyond_all_numbers_is_not_judged() =>
        Nominal().With(("jigResonanceHz", decimal.MaxValue)).IsNotJudged("Tension in the jig");

    [Theory]
    [InlineData(100, false)]
    [InlineData(12, true)]
    public void Stress_near_yield_is_a_warning_and_no_verdict(int yieldMpa, bool warns)
    {
        var input = Nominal().WithNumbers(("yieldStressMpa", yieldMpa));
        Assert.Equal(warns, input.Judge().Findings.Any(f => f.Text.Contains("it will creep", StringComparison.Ordinal)));
        Assert.True(input.Passes());
    }

    [Fact]
    public void More_resonance_never_gives_less_tension() =>
        Gen.Select(Gen.Double[1, 5000], Gen.Double[0, 500])
            .Sample((hertz, more) => Assert.True(Tension(At(hertz + more)) >= Tension(At(hertz))));

    [Fact]
    public void Denser_air_never_gives_less_tension_for_the_same_resonance() =>
        Gen.Select(Gen.Int[700, 1000], Gen.Int[0, 100])
            .Sample(
                (hectopascals, more) =>
                    Assert.True(
                        Tension(Nominal().With(("tunePressureHpa", hectopascals + more)))
                            >= Tension(Nominal().With(("tunePressureHpa", hectopascals)))
                    )
            );

    [Fact]
    public void A_reading_that_fails_fails_the_more_when_it_is_further_off() =>
        Gen.Select(Gen.Double[600, 2400], Gen.Double[0, 300])
            .Sample(
                (hertz, more) =>
                    Assert.False(At(hertz).Passes() == false && At(hertz > 1200 ? hertz + more : hertz - more).Passes() == true)
            );

    private static StageInput At(double hertz) => Nominal().With(("jigResonanceHz", (decimal)hertz));

    private static decimal Tension(StageInput input) => input.Judge().Value("jigTensionNm");
}
