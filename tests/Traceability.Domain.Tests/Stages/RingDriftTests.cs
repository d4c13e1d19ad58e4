using CsCheck;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Tests.Stages;

public class RingDriftTests
{
    private static StageInput Nominal => Judging.Nominal("TARN-2", "diaphragm", "ring-resonance");

    private static StageInput AsOnThePaper =>
        Nominal
            .WithNumbers(("airLoadCoefficient", 0.98592632161m))
            .WithEarlier(
                ("jigTensionNm", null),
                Tune("tuneTemperatureC", 20),
                Tune("tuneHumidityPct", 0),
                Tune("tunePressureHpa", 1013.25m)
            )
            .With(("ringTemperatureC", 20), ("ringHumidityPct", 0), ("ringPressureHpa", 1013.25m));

    /// <summary>
    /// Reference sheet A6-006: 1265.65 Hz on 12.0 mm from 1200 Hz on 12.5 mm, 6 um of PET with 50 nm of gold, unbaffled; the drifts by
    /// hand.
    /// </summary>
    [Theory]
    [InlineData(1265.7, "0.00")]
    [InlineData(1240.3, "-2.00")]
    [InlineData(1202.4, "-5.00")]
    [InlineData(1278.3, "1.00")]
    public void Drift_is_measured_over_expected_less_one(double hertz, string percent)
    {
        var outcome = AsOnThePaper.With(("ringResonanceHz", (decimal)hertz)).Judge();
        Assert.Equal(("1266", percent), (outcome.Digits("expectedRingHz"), outcome.Digits("driftPct")));
    }

    [Fact]
    public void The_tension_on_the_ring_is_that_of_the_jig_when_nothing_drifted()
    {
        var expected = Judging.Nominal("TARN-2", "diaphragm", "fine-tune").Judge();
        Assert.InRange(
            Nominal.With(("ringResonanceHz", expected.Value("expectedOnRingHz"))).Judge().Value("ringTensionNm")
                - expected.Value("jigTensionNm"),
            -0.05m,
            0.05m
        );
    }

    [Fact]
    public void Drift_and_stress_are_judged_at_their_limits()
    {
        Nominal.JudgesAtItsLimits("driftPct", 0.01m);
        Nominal.JudgesAtItsLimits("ringStressMpa", 0.01m);
    }

    [Fact]
    public void A_film_that_slips_fails_by_its_drift_even_where_the_resonance_alone_would_pass()
    {
        var slipped = Nominal.WithEarlier(("jigTensionNm", 47m)).With(("ringResonanceHz", 1250));
        Assert.False(slipped.Passes());
        Assert.True(slipped.WithLimits("driftPct", null, null).Passes());
    }

    [Fact]
    public void The_weather_between_the_two_readings_is_no_drift()
    {
        var fair = Nominal.With(("ringPressureHpa", 1030), ("ringResonanceHz", 1256)).Judge();
        var foul = Nominal.With(("ringPressureHpa", 970), ("ringResonanceHz", 1256)).Judge();
        Assert.InRange(fair.Value("driftPct") - foul.Value("driftPct"), 1.5m, 2.5m);
        Assert.True(fair.Value("expectedRingHz") < foul.Value("expectedRingHz"));
    }

    [Fact]
    public void The_jig_keeps_the_air_load_of_the_bench_that_tuned_it()
    {
        var tuned = Judging
            .Nominal("TARN-2", "diaphragm", "fine-tune")
            .Calibrated("airLoadCoefficient", 1.4m)
            .Judge()
            .Value("jigTensionNm");
        Assert.True(
            Nominal.Calibrated("airLoadCoefficient", 1.0m).WithEarlier(("jigTensionNm", tuned)).Judge().Value("driftPct")
                < Nominal.Calibrated("airLoadCoefficient", 1.4m).WithEarlier(("jigTensionNm", tuned)).Judge().Value("driftPct") - 5
        );
    }

    [Fact]
    public void Without_a_reading_in_the_jig_nothing_is_judged() =>
        Nominal.WithEarlier(("jigResonanceHz", null)).IsNotJudged("no reading of the resonance in the jig");

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    public void A_resonance_that_is_none_is_not_judged(int hertz) => Nominal.With(("ringResonanceHz", hertz)).IsNotJudged("above zero");

    [Theory]
    [InlineData("ringTemperatureC")]
    [InlineData("ringHumidityPct")]
    [InlineData("ringPressureHpa")]
    public void Without_air_here_nothing_is_judged(string characteristic) =>
        Nominal.With((characteristic, null)).IsNotJudged("check their units");

    [Theory]
    [InlineData("tuneTemperatureC")]
    [InlineData("tuneHumidityPct")]
    [InlineData("tunePressureHpa")]
    public void Without_air_at_the_tuning_nothing_is_judged(string characteristic) =>
        Nominal.WithEarlier((characteristic, null)).IsNotJudged("at the tuning");

    [Fact]
    public void Damper_air_than_at_the_tuning_is_told_as_advice()
    {
        Assert.Empty(Nominal.Judge().Findings);
        var finding = Assert.Single(Nominal.With(("ringHumidityPct", 57)).Judge().Findings);
        Assert.Contains("+12 % humidity since the tuning would move the resonance by about -", finding.Text, StringComparison.Ordinal);
        Assert.False(finding.Fails);
    }

    [Fact]
    public void More_resonance_never_gives_less_tension_or_less_drift() =>
        Gen.Select(Gen.Double[200, 3000], Gen.Double[0, 300])
            .Sample(
                (hertz, more) =>
                {
                    var (less, higher) = (At(hertz).Judge(), At(hertz + more).Judge());
                    Assert.True(
                        higher.Value("ringTensionNm") >= less.Value("ringTensionNm") && higher.Value("driftPct") >= less.Value("driftPct")
                    );
                }
            );

    [Fact]
    public void A_reading_that_fails_fails_the_more_when_it_is_further_off() =>
        Gen.Select(Gen.Double[800, 1700], Gen.Double[0, 200])
            .Sample(
                (hertz, more) =>
                    Assert.False(At(hertz).Passes() == false && At(hertz > 1266 ? hertz + more : hertz - more).Passes() == true)
            );

    private static (string, decimal?) Tune(string name, decimal value) => (name, value);

    private static StageInput At(double hertz) => Nominal.With(("ringResonanceHz", (decimal)hertz));
}
