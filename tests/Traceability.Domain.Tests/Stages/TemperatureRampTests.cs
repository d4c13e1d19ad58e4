using CsCheck;
using Traceability.Domain.Stages.ClimateSoak;

namespace Traceability.Domain.Tests.Stages;

public class TemperatureRampTests
{
    private static readonly DateTimeOffset Start = new(2031, 3, 4, 8, 0, 0, TimeSpan.Zero);

    private static List<ClimateSample> Log(params (double Minute, double TemperatureC)[] lines) =>
        [.. lines.Select(l => new ClimateSample(Start.AddMinutes(l.Minute), l.TemperatureC))];

    [Fact]
    public void A_spike_between_two_lines_is_averaged_over_the_window()
    {
        var log = Log((0, 40), (10, 40), (11, 42.5), (12, 40), (30, 40));
        Assert.Equal(2.5, TemperatureRamp.BetweenSamples(log).KPerMinute, 12);
        Assert.Equal(0.5, TemperatureRamp.OverWindow(log, 5).KPerMinute, 12);
    }

    [Fact]
    public void A_step_of_five_kelvin_shows_as_one_kelvin_per_minute_over_five_minutes()
    {
        var ramp = TemperatureRamp.OverWindow(Log((0, 20), (20, 20), (20.5, 25), (60, 25)), 5);
        Assert.Equal(1.0, ramp.KPerMinute, 12);
        Assert.InRange(ramp.From!.Value, Start.AddMinutes(15.5), Start.AddMinutes(20));
    }

    [Fact]
    public void A_log_shorter_than_the_window_is_taken_whole() =>
        Assert.Equal(1.5, TemperatureRamp.OverWindow(Log((0, 20), (1, 22), (2, 23)), 5).KPerMinute, 12);

    [Fact]
    public void Cooling_counts_like_heating() =>
        Assert.Equal(2, TemperatureRamp.OverWindow(Log((0, 40), (10, 20), (30, 20)), 5).KPerMinute, 12);

    [Fact]
    public void The_moving_pointers_find_what_a_search_over_all_windows_finds()
    {
        var logs = Gen.Select(Gen.Double[0.2, 4], Gen.Double[-5, 5])
            .List[2, 40]
            .Select(steps =>
            {
                var lines = new List<ClimateSample> { new(Start, 20) };
                foreach (var (minutes, change) in steps)
                    lines.Add(new(lines[^1].At.AddMinutes(minutes), lines[^1].TemperatureC + change));
                return lines;
            });
        logs.Sample(
            log =>
            {
                if ((log[^1].At - log[0].At).TotalMinutes <= 5)
                    return;
                var fine = 0.0;
                for (var from = 0.0; from + 5 <= (log[^1].At - log[0].At).TotalMinutes; from += 0.01)
                    fine = Math.Max(fine, Math.Abs(At(log, from + 5) - At(log, from)) / 5);
                var found = TemperatureRamp.OverWindow(log, 5).KPerMinute;
                Assert.True(found >= fine - 1e-6 && found <= fine + 0.15, $"{found} against {fine}");
            },
            iter: 100
        );
    }

    private static double At(List<ClimateSample> log, double minute)
    {
        var at = Start.AddMinutes(minute);
        var right = log.FindIndex(1, s => s.At >= at);
        if (right < 0)
            return log[^1].TemperatureC;
        var share = (at - log[right - 1].At).TotalMinutes / (log[right].At - log[right - 1].At).TotalMinutes;
        return (1 - share) * log[right - 1].TemperatureC + share * log[right].TemperatureC;
    }
}
