using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Tests.Stages;

/// <summary>The two ways in which a route states insulation: as the tester's resistance, and from voltage and current.</summary>
public class InsulationMethodTests
{
    private static StageInput FromCurrent => Judging.Nominal("TARN-1", "capsule", "insulation");

    private static StageInput AsResistance => Judging.Nominal("TARN-2", "capsule", "insulation");

    private static readonly DateTimeOffset At = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Resistance_is_voltage_over_current_less_the_protection_resistor()
    {
        var outcome = FromCurrent.With(("currentAt60sPicoampere", 112.5m)).WithNumbers(("seriesResistanceMohm", 1000)).Judge();

        Assert.Equal(("399.0", "1.040"), (outcome.Digits("insulationAt60sGohm"), outcome.Digits("insulationRatio")));
    }

    [Fact]
    public void The_leakage_of_the_empty_fixture_is_taken_off_in_parallel() =>
        Assert.Equal(
            "500.0",
            FromCurrent
                .With(("currentAt60sPicoampere", 112.5m))
                .WithNumbers(("seriesResistanceMohm", 0.0001m), ("fixtureResistanceGohm", 2000))
                .Judge()
                .Digits("insulationAt60sGohm")
        );

    [Fact]
    public void A_current_below_the_floor_gives_greater_than_and_no_ratio()
    {
        var outcome = FromCurrent.With(("currentAt60sPicoampere", 0)).Judge();

        Assert.StartsWith(">", outcome.Digits("insulationAt60sGohm"), StringComparison.Ordinal);
        Assert.Null(outcome.Digits("insulationRatio"));
        Assert.True(FromCurrent.With(("currentAt60sPicoampere", 0)).Passes());
    }

    [Theory]
    [InlineData("testVoltageV", 0, "test voltage of 0 V")]
    [InlineData("testVoltageV", -100, "must be above zero")]
    [InlineData("currentAt60sPicoampere", -250, "check the sign")]
    [InlineData("currentAt15sPicoampere", -1, "check the sign")]
    public void A_voltage_or_current_of_zero_or_of_the_wrong_sign_is_not_judged(string name, int value, string words) =>
        FromCurrent.With((name, value)).WithNumbers(("currentFloorPicoampere", 0.1m)).IsNotJudged(words);

    [Fact]
    public void A_dirty_capsule_fails_by_its_current() =>
        Assert.False(FromCurrent.With(("currentAt15sPicoampere", 2000), ("currentAt60sPicoampere", 2400)).Passes());

    public static TheoryData<string> BothModels => ["TARN-1", "TARN-2"];

    [Theory]
    [MemberData(nameof(BothModels))]
    public void A_reading_before_the_electrification_time_is_not_judged_and_the_words_say_what_to_do(string model)
    {
        var input = Judging.Nominal(model, "capsule", "insulation");
        input.With(("electrificationS", 42)).IsNotJudged("after 42 s", "asks for 60 s", "read again");
        input.With(("electrificationS", -1)).IsNotJudged("cannot be");
        Assert.True(input.With(("electrificationS", 60)).Passes());
    }

    [Theory]
    [MemberData(nameof(BothModels))]
    public void A_reading_recorded_too_soon_after_the_test_was_begun_is_marked_when_no_time_was_entered(string model)
    {
        var input = Judging.Nominal(model, "capsule", "insulation");
        var last = model == "TARN-1" ? "currentAt60sPicoampere" : "insulationAt60sGohm";
        Assert.Contains(
            Read(20, null).Judge().Findings,
            f => !f.Fails && f.Text.Contains("20 s after the test was begun, less than the 60 s", StringComparison.Ordinal)
        );
        Assert.DoesNotContain(Read(60, null).Judge().Findings, IsMark);
        Assert.DoesNotContain(Read(20, 60).Judge().Findings, IsMark);
        Assert.DoesNotContain(Read(0, null).Judge().Findings, IsMark);

        StageInput Read(int seconds, decimal? entered) =>
            input.With(("electrificationS", entered)) with
            {
                OpenedAt = At,
                ReadAt = new Dictionary<string, DateTimeOffset> { [last] = At.AddSeconds(seconds) },
            };
        static bool IsMark(StageFinding f) => f.Text.Contains("after the test was begun", StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(BothModels))]
    public void A_test_above_the_permitted_voltage_fails_by_it_also_after_a_correction(string model)
    {
        var input = Judging.Nominal(model, "capsule", "insulation");

        Assert.True(input.With(("testVoltageV", 50)).Passes());
        var above = input
            .WithEarlier(("pullInV", 58), ("pullInFrontV", model == "TARN-1" ? null : 80m), ("pullInRearV", model == "TARN-1" ? null : 58m))
            .With(("testVoltageV", 50));
        Assert.Contains(above.Judge().Findings, f => f.Fails && f.Text.Contains("at most 46.4 V", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(BothModels))]
    public void Resistance_is_not_referred_to_another_temperature(string model) =>
        Assert.DoesNotContain(
            "insulationAt20CGohm",
            Judging
                .Nominal(model, "capsule", "insulation")
                .With(("insulationTemperatureC", 30))
                .Judge()
                .Computed.Select(c => c.Characteristic)
        );

    [Fact]
    public void A_resistance_of_zero_is_not_judged() => AsResistance.With(("frontToBodyGohm", 0)).IsNotJudged("above zero");
}
