using Traceability.Domain.Stages.ClimateSoak;

namespace Traceability.Domain.Tests.Stages;

public class CondensationWatchTests
{
    private static readonly DateTimeOffset Start = new(2031, 3, 4, 8, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_part_at_room_temperature_is_wet_as_soon_as_it_comes_into_the_humid_cabinet()
    {
        // Dew point at 40 °C and 93 %: 38.649 °C by Magnus (WMO-No. 8); a part at 23 °C is 15.649 K below it.
        ClimateSample[] log = [new(Start, 23, 50), new(Start.AddSeconds(1), 40, 93)];
        var watch = CondensationWatch.Along(log, 1e6);

        Assert.Equal(-15.6486, watch.LeastMarginK!.Value, 3);
        Assert.Equal([new WetSpell(Start.AddSeconds(1), Start.AddSeconds(1))], watch.Wet);
    }

    [Fact]
    public void A_part_as_warm_as_unsaturated_air_is_never_wet()
    {
        ClimateSample[] log = [new(Start, 23, 50), new(Start.AddMinutes(1), 40, 93)];
        Assert.Empty(CondensationWatch.Along(log, null).Wet);
    }

    [Fact]
    public void Wetness_ends_when_the_part_has_warmed_up()
    {
        ClimateSample[] log = [new(Start, 23, 50), .. Enumerable.Range(1, 60).Select(m => new ClimateSample(Start.AddMinutes(m), 40, 93))];
        var spell = Assert.Single(CondensationWatch.Along(log, 5).Wet);

        // 17 K behind, to be within 40 - 38.649 = 1.351 K: 5 ln(17/1.351) = 12.7 min after the change, which takes the first minute.
        Assert.Equal(Start.AddMinutes(1), spell.From);
        Assert.InRange((spell.Until - Start).TotalMinutes, 12, 14);
    }

    [Fact]
    public void A_log_without_humidity_says_nothing() =>
        Assert.Null(CondensationWatch.Along([new(Start, 23), new(Start.AddMinutes(1), 40)], 5).LeastMarginK);

    [Theory]
    [InlineData(5)]
    [InlineData(20)]
    public void A_slower_part_is_never_less_wet(double lag)
    {
        ClimateSample[] log =
        [
            new(Start, 23, 50),
            .. Enumerable.Range(1, 60).Select(m => new ClimateSample(Start.AddMinutes(m), Math.Min(40, 23 + m), 93)),
        ];
        Assert.True(CondensationWatch.Along(log, lag).LeastMarginK <= CondensationWatch.Along(log, lag / 2).LeastMarginK);
    }
}
