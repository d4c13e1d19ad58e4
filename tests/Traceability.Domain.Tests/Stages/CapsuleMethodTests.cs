using CsCheck;
using Traceability.Domain.Stages;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Tests.Stages;

public class CapsuleMethodTests
{
    private static StageInput Single => Judging.Nominal("TARN-1", "capsule", "capacitance");

    private static StageInput Dual => Judging.Nominal("TARN-2", "capsule", "capacitance");

    /// <summary>A capsule of the reference sheet: 13 mm, full electrode, 48 V, no strays; 117.523662107 pF at 40 um (B1-002).</summary>
    private static StageInput OfTheSheet(decimal tensionNm) =>
        Diaphragms(
            Single
                .With(("capacitancePf", 117.523662m))
                .WithNumbers(
                    ("ringRadiusMm", 13),
                    ("effectiveAreaPct", 100),
                    ("strayCapacitancePf", 0.000001m),
                    ("polarisingVoltageV", 48)
                ),
            d =>
                d with
                {
                    Values = new Dictionary<string, decimal> { ["ringTensionNm"] = tensionNm, ["ringResonanceHz"] = 1800 },
                }
        );

    private static StageInput Diaphragms(StageInput input, Func<FittedPart, FittedPart> change) =>
        input with
        {
            Inside = input.Inside.ToDictionary(i => i.Key, i => i.Value is FittedPart d ? change(d) : i.Value),
        };

    private static StageInput Diaphragm(StageInput input, string position, params (string Name, decimal? Value)[] values) =>
        Diaphragms(
            input,
            d =>
                d.Position != position
                    ? d
                    : d with
                    {
                        Values = d
                            .Values.Where(v => values.All(x => x.Name != v.Key))
                            .Concat(values.Where(v => v.Value is not null).Select(v => KeyValuePair.Create(v.Name, v.Value!.Value)))
                            .ToDictionary(),
                    }
        );

    /// <summary>
    /// Reference sheet B1-002 (gap), B3-010 (pull-in 82.1654 V), B4-008 (f/f0 0.942418 about the deflected state, on 1800 Hz).
    /// </summary>
    [Fact]
    public void Gap_pull_in_and_softened_resonance_are_those_of_the_exact_membrane()
    {
        var outcome = OfTheSheet(100).Judge();
        Assert.Equal(
            ("40.0", "82.2", "1696"),
            (outcome.Digits("gapUm"), outcome.Digits("pullInV"), outcome.Digits("polarisedResonanceHz"))
        );
        Assert.Equal("1.71", outcome.Digits("pullInMargin"));
    }

    /// <summary>Reference sheet B5-002: 2.3405 Hz of 1 GOhm and 68 pF.</summary>
    [Fact]
    public void The_low_corner_is_that_of_capsule_and_bias_resistor() =>
        Assert.Equal("2.34", Single.With(("capacitancePf", 68)).Judge().Digits("lowCornerHz"));

    /// <summary>100 * 2 * 4 / 136 = 5.882 (by hand).</summary>
    [Fact]
    public void Front_against_rear_is_told_in_percent_of_their_mean() =>
        Assert.Equal("5.88", Dual.With(("capacitanceFrontPf", 66), ("capacitanceRearPf", 70)).Judge().Digits("asymmetryPct"));

    [Fact]
    public void Front_and_rear_are_compared_in_resonance_and_tension()
    {
        var outcome = Diaphragm(
                Diaphragm(Dual, "front-diaphragm", ("ringResonanceHz", 1270), ("ringTensionNm", 42)),
                "rear-diaphragm",
                ("ringResonanceHz", 1255),
                ("ringTensionNm", 41)
            )
            .Judge();
        Assert.Equal(("15.0", "2.4"), (outcome.Digits("resonanceDifferenceHz"), outcome.Digits("tensionDifferencePct")));
    }

    [Fact]
    public void Every_computed_figure_is_judged_at_its_limits()
    {
        Dual.JudgesAtItsLimits("gapFrontUm", 0.1m);
        Dual.JudgesAtItsLimits("pullInMarginRear", 0.01m);
        Dual.JudgesAtItsLimits("lowCornerFrontHz", 0.01m);
        Dual.With(("capacitanceRearPf", 69)).JudgesAtItsLimits("asymmetryPct", 0.01m);
        Diaphragm(Dual, "rear-diaphragm", ("ringTensionNm", 41)).JudgesAtItsLimits("tensionDifferencePct", 0.1m);
        Diaphragm(Dual, "rear-diaphragm", ("ringResonanceHz", 1260)).JudgesAtItsLimits("resonanceDifferenceHz", 0.1m);
        Single.JudgesAtItsLimits("pullInMargin", 0.01m);
    }

    /// <summary>
    /// 60 V at 80 % of pull-in is 75 V; T = eps0 (a V / 1.256367)² / d³ makes it about 36.4 N/m on the nominal gap of the dual capsule
    /// (50.2 um).
    /// </summary>
    [Theory]
    [InlineData(38, null)]
    [InlineData(34, "usual are at most 80 %")]
    public void More_than_four_fifths_of_the_pull_in_voltage_is_told(int tension, string? says)
    {
        var outcome = Diaphragm(Dual, "front-diaphragm", ("ringTensionNm", tension)).Judge();
        Assert.Equal(says is null, outcome.Findings.Count == 0);
        Assert.All(
            outcome.Findings,
            f =>
                Assert.True(
                    !f.Fails
                        && f.Text.Contains(says!, StringComparison.Ordinal)
                        && f.Text.Contains("edge-clamped", StringComparison.Ordinal)
                )
        );
    }

    [Fact]
    public void A_film_that_would_fall_onto_the_electrode_fails_whatever_the_limits_say()
    {
        var slack = Diaphragm(Single, "diaphragm", ("ringTensionNm", 5)).WithLimits("pullInMargin", null, null);
        Assert.False(slack.Passes());
        Assert.Contains(slack.Judge().Findings, f => f.Fails && f.Text.Contains("do not polarise it", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_a_tension_on_record_there_is_no_safety_figure_and_no_verdict()
    {
        Diaphragm(Single, "diaphragm", ("ringTensionNm", null)).IsNotJudged("the diaphragm has no tension on record", "Pull-in voltage");
        Diaphragm(Dual, "rear-diaphragm", ("ringTensionNm", null)).IsNotJudged("the diaphragm of the rear has no tension on record");
        Diaphragm(Dual, "front-diaphragm", ("ringResonanceHz", null)).IsNotJudged("the diaphragm of the front has no resonance on record");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-66)]
    [InlineData(3)]
    public void A_capacitance_that_is_none_is_not_judged(int picofarads)
    {
        Single.With(("capacitancePf", picofarads)).IsNotJudged($"A capacitance of {picofarads} pF cannot be", "3 pF of leads");
        Dual.With(("capacitanceRearPf", picofarads)).IsNotJudged($"A capacitance of {picofarads} pF cannot be");
    }

    [Fact]
    public void The_meter_s_own_strays_go_before_the_route_s() =>
        Assert.True(Single.Calibrated("strayCapacitancePf", 6).Judge().Value("gapUm") > Single.Judge().Value("gapUm"));

    [Fact]
    public void Two_film_lots_in_one_capsule_are_told_and_no_verdict()
    {
        var mixed = Diaphragms(Dual, d => d.Position == "rear-diaphragm" ? d with { FilmLotId = Guid.NewGuid() } : d);
        Assert.True(mixed.Passes());
        Assert.Contains("different film lots", Assert.Single(mixed.Judge().Findings).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Numbers_that_the_route_owes_are_problems()
    {
        var stage = Single.Stage;
        foreach (var number in stage.Parameters.Numbers.Keys.Where(n => n != "strayCapacitancePf"))
        {
            var without = stage with
            {
                Parameters = stage.Parameters with { Numbers = stage.Parameters.Numbers.Where(n => n.Key != number).ToDictionary() },
            };
            Assert.Contains(StageMethods.Get(stage.Method).ProblemsWith(without), p => p.Contains($"'{number}'", StringComparison.Ordinal));
        }

        Assert.Contains(
            StageMethods.Get(stage.Method).ProblemsWith(Single.WithNumbers(("effectiveAreaPct", 101)).Stage),
            p => p.Contains("at most 100", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void More_capacitance_never_means_a_wider_gap_or_a_greater_margin() =>
        Gen.Select(Gen.Double[10, 200], Gen.Double[0, 50])
            .Sample(
                (picofarads, more) =>
                {
                    var (less, higher) = (At(picofarads).Judge(), At(picofarads + more).Judge());
                    Assert.True(
                        higher.Value("gapUm") <= less.Value("gapUm")
                            && higher.Value("pullInMargin") <= less.Value("pullInMargin")
                            && higher.Value("lowCornerHz") <= less.Value("lowCornerHz")
                    );
                }
            );

    [Fact]
    public void More_tension_never_means_a_smaller_margin() =>
        Gen.Select(Gen.Double[5, 100], Gen.Double[0, 50]).Sample((tension, more) => Assert.True(Margin(tension + more) >= Margin(tension)));

    [Fact]
    public void A_reading_that_fails_fails_the_more_when_it_is_further_off() =>
        Gen.Select(Gen.Double[40, 100], Gen.Double[0, 30])
            .Sample(
                (picofarads, more) =>
                    Assert.False(
                        At(picofarads).Passes() == false && At(picofarads > 66 ? picofarads + more : picofarads - more).Passes() == true
                    )
            );

    private static StageInput At(double picofarads) => Single.With(("capacitancePf", (decimal)picofarads));

    private static decimal Margin(double tension) =>
        Diaphragm(Single, "diaphragm", ("ringTensionNm", (decimal)tension)).Judge().Value("pullInMargin");
}
