using Traceability.Domain.Stages.ClimateSoak;

namespace Traceability.Domain.Tests.Stages;

public class SoakConformityTests
{
    private static readonly DateTimeOffset Start = new(2031, 3, 4, 8, 0, 0, TimeSpan.FromHours(1));
    private static readonly SoakPhase Warm = new("warm", 40, 2, null, null, 60, MaxRampKPerMinute: 1, MaxGapMinutes: 10);
    private static readonly SoakPhase Humid = Warm with { Name = "humid", HumidityPct = 93, HumidityTolerancePct = 3 };

    private static List<ClimateSample> Log(int minutes, Func<int, double> temperature, Func<int, double?>? humidity = null) =>
        [.. Enumerable.Range(0, minutes).Select(i => new ClimateSample(Start.AddMinutes(i), temperature(i), humidity?.Invoke(i)))];

    [Fact]
    public void A_steady_log_conforms_and_its_dwell_is_the_whole_log()
    {
        var result = SoakConformity.Judge(Log(91, _ => 40), Warm);
        Assert.Equal(SoakVerdict.Conforms, result.Verdict);
        Assert.Equal(90, result.DwellMinutes);
        Assert.Equal(Start, result.StabilisedAt);
        Assert.Equal(0, result.ExcursionCount);
    }

    [Fact]
    public void An_excursion_restarts_the_dwell()
    {
        var result = SoakConformity.Judge(Log(101, i => i == 50 ? 42.5 : 40), Warm);
        Assert.Equal(SoakVerdict.DoesNotConform, result.Verdict);
        Assert.Equal(49, result.DwellMinutes);
        Assert.Equal(Start, result.StabilisedAt);
        Assert.Equal(1, result.ExcursionCount);
        Assert.Equal(2, result.LongestExcursionMinutes);
        Assert.Contains(result.Findings, f => f.Contains("42.5 °C is outside 40 ± 2 °C", StringComparison.Ordinal));
    }

    [Fact]
    public void The_longer_of_two_dwells_counts()
    {
        var result = SoakConformity.Judge(Log(121, i => i == 20 ? 37.9 : 40), Warm);
        Assert.Equal(SoakVerdict.Conforms, result.Verdict);
        Assert.Equal(99, result.DwellMinutes);
        Assert.Equal(Start.AddMinutes(21), result.StabilisedAt);
    }

    [Fact]
    public void A_subtracted_excursion_keeps_the_time_before_it()
    {
        var phase = Warm with { Excursions = ExcursionRule.IsSubtracted };
        var result = SoakConformity.Judge(Log(101, i => i == 50 ? 42.5 : 40), phase);
        Assert.Equal(SoakVerdict.Conforms, result.Verdict);
        Assert.Equal(98, result.DwellMinutes);
        Assert.Contains(result.Findings, f => f.StartsWith("1 excursions subtracted", StringComparison.Ordinal));
    }

    [Fact]
    public void The_limit_itself_is_in_tolerance_whatever_its_binary_form()
    {
        var phase = Warm with { TemperatureC = 22.9, TemperatureToleranceK = 0.3 };
        Assert.Equal(SoakVerdict.Conforms, SoakConformity.Judge(Log(91, _ => 23.2), phase).Verdict);
        Assert.Equal(SoakVerdict.DoesNotConform, SoakConformity.Judge(Log(91, _ => 23.2001), phase).Verdict);
    }

    [Fact]
    public void A_gap_wider_than_allowed_is_an_excursion()
    {
        var log = Log(101, _ => 40);
        log.RemoveRange(45, 20);
        var result = SoakConformity.Judge(log, Warm);
        Assert.Equal(SoakVerdict.DoesNotConform, result.Verdict);
        Assert.Equal(44, result.DwellMinutes);
        Assert.Equal(21, result.LongestExcursionMinutes);
        Assert.Equal(21, result.WidestGapMinutes);
        Assert.Equal(SoakVerdict.Conforms, SoakConformity.Judge(log, Warm with { MaxGapMinutes = 21 }).Verdict);
    }

    [Fact]
    public void A_slow_rise_is_no_excursion_and_the_dwell_starts_in_tolerance()
    {
        var result = SoakConformity.Judge(Log(121, i => Math.Min(40, 20 + 0.5 * i)), Warm);
        Assert.Equal(Start.AddMinutes(36), result.StabilisedAt);
        Assert.Equal(84, result.DwellMinutes);
        Assert.Equal(0.5, result.MaxRampKPerMinute, 12);
        Assert.Equal(SoakVerdict.Conforms, result.Verdict);
    }

    [Fact]
    public void A_fast_rise_fails_although_the_dwell_is_met()
    {
        var result = SoakConformity.Judge(Log(121, i => Math.Min(40, 20 + 1.1 * i)), Warm);
        Assert.Equal(SoakVerdict.DoesNotConform, result.Verdict);
        Assert.Equal(1.1, result.MaxRampKPerMinute, 12);
    }

    [Fact]
    public void A_part_with_a_time_constant_stabilises_later_than_the_air()
    {
        // Step from 20 to 40 °C, tau 20 min: within 3 K after 20 ln(20/3) = 37.9 min, so at the reading of minute 38 after the step.
        var result = SoakConformity.Judge(
            Log(200, i => i == 0 ? 20 : 40),
            Warm with
            {
                SpecimenTimeConstantMinutes = 20,
                MaxRampKPerMinute = null,
            }
        );
        Assert.Equal(Start.AddMinutes(39), result.StabilisedAt);
    }

    [Fact]
    public void Humidity_is_judged_while_the_temperature_is_in_tolerance()
    {
        var log = Log(
            131,
            i => i < 30 ? 30 : 40,
            i =>
                i < 30 ? 50
                : i == 100 ? 89.9
                : 93
        );
        var result = SoakConformity.Judge(log, Humid with { MaxRampKPerMinute = null });
        Assert.Equal(69, result.DwellMinutes);
        Assert.Equal(SoakVerdict.Conforms, result.Verdict);
        Assert.Equal("2031-03-04 09:40:00: 89.9 % is outside 93 ± 3 % RH", result.Findings[0]);
    }

    [Fact]
    public void Humidity_that_is_asked_for_and_not_logged_is_never_in_tolerance()
    {
        var result = SoakConformity.Judge(Log(131, _ => 40), Humid);
        Assert.Equal(SoakVerdict.DoesNotConform, result.Verdict);
        Assert.Null(result.StabilisedAt);
        Assert.Equal("humid: never stabilised", result.Findings[0]);
    }

    [Fact]
    public void Leaving_tolerance_after_the_dwell_is_the_end_of_the_phase()
    {
        var result = SoakConformity.Judge(Log(131, i => i < 100 ? 40 : 40 - 0.5 * (i - 99)), Warm);
        Assert.Equal(SoakVerdict.Conforms, result.Verdict);
        Assert.Equal(0, result.ExcursionCount);
    }

    [Fact]
    public void Time_that_runs_backwards_gives_no_verdict_and_names_the_sample()
    {
        var log = Log(91, _ => 40);
        log[50] = log[50] with { At = Start.AddMinutes(10) };
        var result = SoakConformity.Judge(log, Warm);
        Assert.Equal(SoakVerdict.NotShown, result.Verdict);
        Assert.StartsWith("sample 51 at 2031-03-04 08:10:00 is not later", result.Findings[0], StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_log_gives_no_verdict()
    {
        Assert.Equal(SoakVerdict.NotShown, SoakConformity.Judge([], Warm).Verdict);
        Assert.Equal(SoakVerdict.NotShown, SoakConformity.Judge(Log(50, _ => double.NaN), Warm).Verdict);
    }

    [Fact]
    public void Samples_without_a_temperature_leave_a_gap()
    {
        var result = SoakConformity.Judge(Log(101, i => i is > 40 and < 60 ? double.NaN : 40), Warm);
        Assert.Equal(20, result.WidestGapMinutes);
        Assert.Equal(40, result.DwellMinutes);
        Assert.Contains("19 samples carry no temperature and are left out", result.Findings);
    }

    [Fact]
    public void A_phase_without_a_tolerance_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SoakConformity.Judge(Log(91, _ => 40), Warm with { TemperatureToleranceK = 0 }));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            SoakConformity.Judge(Log(91, _ => 40), Humid with { HumidityTolerancePct = null })
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => SoakConformity.Judge(Log(91, _ => 40), Warm with { RampWindowMinutes = 6 }));
    }
}
