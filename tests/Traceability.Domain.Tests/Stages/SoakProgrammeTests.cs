using CsCheck;
using Traceability.Domain.Stages.ClimateSoak;

namespace Traceability.Domain.Tests.Stages;

public class SoakProgrammeTests
{
    private static readonly DateTimeOffset Start = new(2031, 3, 4, 8, 0, 0, TimeSpan.Zero);
    private static readonly SoakPhase Warm = new("warm", 40, 2, null, null, 60, 1.5, 5);
    private static readonly SoakPhase Cold = new("cold", 5, 3, null, null, 60, 1.5, 5);

    private static List<ClimateSample> WarmThenCold(int warmMinutes, int coldMinutes)
    {
        List<double> temperatures =
        [
            .. Enumerable.Range(0, 18).Select(i => 23.0 + i),
            .. Enumerable.Repeat(40.0, warmMinutes),
            .. Enumerable.Range(1, 34).Select(i => 40.0 - i),
            .. Enumerable.Repeat(5.0, coldMinutes),
        ];
        return [.. temperatures.Select((t, i) => new ClimateSample(Start.AddMinutes(i), t))];
    }

    [Fact]
    public void Each_phase_is_judged_on_its_own_piece_of_the_log()
    {
        var results = SoakProgramme.Judge(WarmThenCold(61, 61), [Warm, Cold]);
        Assert.Equal([SoakVerdict.Conforms, SoakVerdict.Conforms], results.Select(r => r.Verdict));
        Assert.All(results, r => Assert.InRange(r.DwellMinutes, 60, 66));
        Assert.True(results[1].StabilisedAt > results[0].DwellEndedAt);
    }

    [Fact]
    public void A_phase_cut_short_fails_and_the_next_one_is_not_shown()
    {
        var results = SoakProgramme.Judge(WarmThenCold(30, 61), [Warm, Cold]);
        Assert.Equal(SoakVerdict.DoesNotConform, results[0].Verdict);
        Assert.Equal(SoakVerdict.NotShown, results[1].Verdict);
    }

    [Fact]
    public void The_last_phase_cut_short_fails_alone() =>
        Assert.Equal(
            [SoakVerdict.Conforms, SoakVerdict.DoesNotConform],
            SoakProgramme.Judge(WarmThenCold(61, 30), [Warm, Cold]).Select(r => r.Verdict)
        );

    [Fact]
    public void Pushing_a_reading_out_of_tolerance_never_makes_a_failed_soak_conform() =>
        Gen.Select(Gen.Double[36, 44].Array[40], Gen.Int[0, 39], Gen.Bool, Gen.Int[5, 30])
            .Sample(
                (temperatures, which, up, dwell) =>
                {
                    var phase = Warm with { MinDwellMinutes = dwell, MaxRampKPerMinute = null };
                    List<ClimateSample> log = [.. temperatures.Select((t, i) => new ClimateSample(Start.AddMinutes(i), t))];
                    var before = SoakConformity.Judge(log, phase);
                    log[which] = log[which] with { TemperatureC = up ? 45 : 35 };
                    var after = SoakConformity.Judge(log, phase);
                    Assert.True(after.DwellMinutes <= before.DwellMinutes);
                    if (before.Verdict is SoakVerdict.DoesNotConform)
                        Assert.Equal(SoakVerdict.DoesNotConform, after.Verdict);
                }
            );

    [Fact]
    public void A_route_without_phases_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SoakProgramme.Judge(WarmThenCold(61, 61), []));
}
