using CsCheck;
using Traceability.Domain.Stages.InsulationTest;

namespace Traceability.Domain.Tests.Stages;

public class InsulationTests
{
    [Fact]
    public void A_current_below_the_floor_of_the_tester_is_greater_than_a_value()
    {
        var read = InsulationResistance.FromVoltageAndCurrent(100, 5e-13, currentFloorA: 1e-12);
        Assert.Equal(new InsulationResistance(1e14, true), read);
        Assert.Equal(new InsulationResistance(1e14, true), InsulationResistance.FromVoltageAndCurrent(100, 0, 1e-12));
    }

    [Theory]
    [InlineData(100, 0)]
    [InlineData(100, -1e-9)]
    [InlineData(0, 1e-9)]
    [InlineData(-100, 1e-9)]
    [InlineData(double.NaN, 1e-9)]
    [InlineData(100, double.NaN)]
    public void Voltages_and_currents_of_zero_or_wrong_sign_give_no_resistance(double volts, double amperes) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => InsulationResistance.FromVoltageAndCurrent(volts, amperes));

    [Fact]
    public void A_reading_at_or_above_the_empty_fixture_is_greater_than_the_fixture()
    {
        Assert.Equal(new InsulationResistance(1e12, true), new InsulationResistance(1e12, false).WithoutFixture(1e12));
        Assert.Equal(new InsulationResistance(1e12, true), new InsulationResistance(3e12, false).WithoutFixture(1e12));
    }

    [Fact]
    public void The_fixture_put_in_parallel_again_gives_back_the_reading() =>
        Gen.Select(Gen.Double[1, 900], Gen.Double[1000, 5000])
            .Sample(
                (gigaohm, fixtureGigaohm) =>
                {
                    var part = new InsulationResistance(gigaohm * 1e9, false).WithoutFixture(fixtureGigaohm * 1e9);
                    Assert.Equal(gigaohm, 1 / (1 / part.Ohm + 1 / (fixtureGigaohm * 1e9)) / 1e9, 1e-6);
                    Assert.False(part.IsGreaterThan);
                }
            );

    [Fact]
    public void Greater_than_stays_greater_than_through_every_correction()
    {
        InsulationResistance bound = new(1e11, true);
        Assert.True(bound.WithoutSeries(1e6).IsGreaterThan);
        Assert.True(bound.WithoutFixture(1e12).IsGreaterThan);
        Assert.Null(InsulationRatios.LateOverEarly(bound, new(2e11, false)));
    }

    [Fact]
    public void A_lower_bound_below_the_limit_decides_nothing()
    {
        Assert.Null(new InsulationResistance(5e10, true).IsAtLeast(1e11));
        Assert.True(new InsulationResistance(2e11, true).IsAtLeast(1e11));
        Assert.False(new InsulationResistance(5e10, false).IsAtLeast(1e11));
        Assert.True(new InsulationResistance(1e11, false).IsAtLeast(1e11));
    }

    [Fact]
    public void More_current_never_turns_a_failed_reading_into_a_passed_one() =>
        Gen.Select(Gen.Double[1e-12, 1e-8], Gen.Double[1, 10])
            .Sample(
                (amperes, times) =>
                {
                    var before = InsulationResistance.FromVoltageAndCurrent(100, amperes, 1e-12).IsAtLeast(1e11);
                    var after = InsulationResistance.FromVoltageAndCurrent(100, amperes * times, 1e-12).IsAtLeast(1e11);
                    Assert.False(before != true && after == true);
                }
            );

    [Fact]
    public void A_short_circuit_behind_the_protection_resistor_reads_zero() =>
        Assert.Equal(0, InsulationResistance.FromVoltageAndCurrent(100, 1.1e-4).WithoutSeries(1e6).Ohm);

    [Fact]
    public void A_series_counts_when_the_resistor_was_right_before_and_after()
    {
        var good = ReferenceResistorCheck.Of(1e10, 1.05e10, 0.05);
        var bad = ReferenceResistorCheck.Of(1e10, 1.06e10, 0.05);
        Assert.True(ReferenceResistorCheck.SeriesCounts(good, good));
        Assert.False(ReferenceResistorCheck.SeriesCounts(good, bad));
        Assert.False(ReferenceResistorCheck.SeriesCounts(good, null));
    }

    [Fact]
    public void The_discharge_of_a_known_resistance_gives_it_back() =>
        Gen.Select(Gen.Double[1, 1000], Gen.Double[10, 200], Gen.Double[1, 100])
            .Sample(
                (gigaohm, picofarad, seconds) =>
                {
                    var end = 60 * Math.Exp(-seconds / (gigaohm * 1e9 * picofarad * 1e-12));
                    if (end < 1e-9)
                        return;
                    Assert.Equal(1, DischargeMethod.ResistanceOhm(picofarad * 1e-12, seconds, 60, end) / (gigaohm * 1e9), 1e-6);
                }
            );

    [Fact]
    public void A_voltage_that_does_not_fall_gives_no_resistance() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => DischargeMethod.ResistanceOhm(60e-12, 60, 60, 60));
}
