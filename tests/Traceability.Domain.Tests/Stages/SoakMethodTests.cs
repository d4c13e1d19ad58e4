using System.Globalization;
using System.Text;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Tests.Stages;

public class SoakMethodTests
{
    private static readonly SoakPhaseParameters Humid = new("humid", 40, 2, 93, 3, 60, 1.5m, 10) { PartTimeConstantMinutes = 5 };

    [Fact]
    public void A_soak_that_keeps_to_its_phase_passes_and_tells_of_condensation_while_the_part_was_cold()
    {
        var outcome = Judge(Humid, Ramped(80));

        Assert.False(outcome.Fails());
        Assert.InRange(outcome.Value("humidDwellMinutes"), 60, 80);
        Assert.InRange(outcome.Value("humidRampKPerMinute"), 0.99m, 1.01m);
        Assert.True(outcome.Value("humidDewMarginK") < 0);
        outcome.Says("water condensed on the part from 2031-03-04 08:1");
    }

    [Fact]
    public void Condensation_fails_where_the_route_wants_the_part_dry() =>
        Assert.True(Judge(Humid with { MustStayDry = true }, Ramped(80)).Fails());

    [Fact]
    public void Condensation_is_told_of_the_phase_in_which_it_happened_and_not_of_the_others()
    {
        var cold = new SoakPhaseParameters("cold", -10, 3, null, null, 60, null, 20) { PartTimeConstantMinutes = 5, MustStayDry = true };
        var humid = Humid with { MaxRampKPerMinute = null };
        var outcome = InPhases([cold, humid], [.. Minutes(0, 80, -10, 60), .. Minutes(81, 160, 40, 93)]);

        Assert.True(outcome.Value("coldDewMarginK") > 0);
        Assert.True(outcome.Value("humidDewMarginK") < -30);
        var wet = Assert.Single(outcome.Findings, f => f.Text.Contains("water condensed", StringComparison.Ordinal));
        Assert.StartsWith("humid: water condensed", wet.Text, StringComparison.Ordinal);
        Assert.EndsWith("while the climate changed and into the dwell", wet.Text, StringComparison.Ordinal);
        Assert.False(outcome.Fails());
    }

    [Fact]
    public void Condensation_in_the_dwell_is_told_from_that_in_the_ramp()
    {
        // A part without time constant is as warm as the air: only air above saturation wets it, here for five minutes of the dwell.
        var outcome = InPhases(
            [
                Humid with
                {
                    PartTimeConstantMinutes = null,
                    HumidityPct = null,
                    HumidityTolerancePct = null,
                    MaxRampKPerMinute = null,
                    MustStayDry = true,
                },
            ],
            [.. Minutes(0, 30, 40, 93), .. Minutes(31, 35, 40, 101), .. Minutes(36, 90, 40, 93)]
        );

        Assert.EndsWith("during the dwell", Assert.Single(outcome.Findings, f => f.Fails).Text, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Minutes(int from, int to, int celsius, int humidity) =>
        Enumerable
            .Range(from, to - from + 1)
            .Select(m => FormattableString.Invariant($"{AMethod.Opened.AddMinutes(m):yyyy-MM-ddTHH:mm:ssZ},{celsius},{humidity}"));

    private static StageOutcome InPhases(SoakPhaseParameters[] phases, string[] lines) =>
        AMethod
            .Named("climate-soak")
            .Files("climate-log", "log")
            .Computes([.. phases.SelectMany(p => new[] { $"{p.Name}DwellMinutes", $"{p.Name}DewMarginK" })])
            .With(new() { ToleranceSource = "test", Phases = phases })
            .File("log", "climate-log", "time,temperature_c,humidity_pct\n" + string.Join('\n', lines) + "\n")
            .Judge();

    [Theory]
    [InlineData(63, true)]
    [InlineData(50, false)]
    public void The_dwell_at_its_limit_passes_and_below_it_fails(int minutes, bool passes) =>
        Assert.Equal(passes, !Judge(Humid, Ramped(minutes)).Fails());

    [Fact]
    public void A_ramp_steeper_than_the_route_allows_fails() =>
        Assert.True(Judge(Humid with { MaxRampKPerMinute = 0.9m }, Ramped(80)).Fails());

    [Fact]
    public void A_gap_restarts_the_dwell()
    {
        var log = Ramped(80).Split('\n').Where((_, i) => i is < 60 or > 75);
        Assert.True(Judge(Humid, string.Join('\n', log)).Fails());
    }

    [Fact]
    public void An_excursion_may_be_subtracted_where_the_route_says_so()
    {
        var log = Ramped(110).Replace("09:00:00Z,40,93", "09:00:00Z,43,93", StringComparison.Ordinal);
        Assert.True(Judge(Humid with { MinDwellMinutes = 80 }, log).Fails());
        Assert.False(Judge(Humid with { MinDwellMinutes = 80, ExcursionsAreSubtracted = true, MaxRampKPerMinute = null }, log).Fails());
    }

    [Theory]
    [InlineData("time,temperature_c\n2031-03-04T08:00:00Z,40\n", "humidity_pct")]
    [InlineData("time,temperature_c,humidity_pct\n2031-03-04T08:00:00Z,NaN,93\n2031-03-04T08:01:00Z,40,93\n", "Line 2")]
    [InlineData("time,temperature_c,humidity_pct\n2031-03-04T08:01:00Z,40,93\n2031-03-04T08:00:00Z,40,93\n", "Line 3")]
    [InlineData("time,temperature_c,humidity_pct\n2030-03-04T08:01:00Z,40,93\n2030-03-04T09:00:00Z,40,93\n", "another run")]
    public void A_log_that_cannot_be_judged_gets_no_verdict(string log, string words) =>
        Assert.Contains(words, Judge(Humid, log).Unreadable, StringComparison.Ordinal);

    /// <summary>The stage is open from 08:00 to 16:00.</summary>
    [Theory]
    [InlineData(-62, 50)]
    [InlineData(450, 530)]
    public void Log_time_before_the_opening_or_after_the_closing_does_not_count(int from, int to)
    {
        var outcome = InPhases([Humid with { MaxRampKPerMinute = null }], [.. Minutes(from, to, 40, 93)]);

        Assert.InRange(outcome.Value("humidDwellMinutes"), 29, 50);
        Assert.True(outcome.Fails());
        outcome.Says("only what lies between the opening");
    }

    [Theory]
    [InlineData(-120, -1)]
    [InlineData(481, 600)]
    [InlineData(-24 * 60, -20 * 60)]
    public void A_log_without_a_line_between_opening_and_closing_gets_no_verdict(int from, int to) =>
        Assert.Contains(
            "belongs to another run",
            InPhases([Humid with { MaxRampKPerMinute = null }], [.. Minutes(from, to, 40, 93)]).Unreadable,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("IEC 60068-2-78:2012", true)]
    [InlineData("workshop procedure 4, edition 1", false)]
    public void A_saturated_soak_is_named_the_workshop_s_own(string source, bool refused) =>
        Assert.Equal(
            refused,
            AMethod
                .Named("climate-soak")
                .Files("climate-log", "log")
                .Computes("humidDwellMinutes")
                .With(new() { ToleranceSource = source, Phases = [Humid with { HumidityPct = 98 }] })
                .Problems.Any(p => p.Contains("the workshop's own procedure", StringComparison.Ordinal))
        );

    private static StageOutcome Judge(SoakPhaseParameters phase, string log) =>
        AMethod
            .Named("climate-soak")
            .Files("climate-log", "log")
            .Computes("humidDwellMinutes", "humidRampKPerMinute", "humidExcursionMinutes", "humidDewMarginK")
            .With(new() { ToleranceSource = "test", Phases = [phase] })
            .File("log", "climate-log", log)
            .Judge();

    /// <summary>From the room to the set point at 1 K/min and 3 % a minute, and so many minutes there.</summary>
    private static string Ramped(int minutesThere)
    {
        var csv = new StringBuilder("time,temperature_c,humidity_pct\n");
        for (var minute = 0; minute <= 17 + minutesThere; minute++)
        {
            csv.Append(
                CultureInfo.InvariantCulture,
                $"{AMethod.Opened.AddMinutes(minute):yyyy-MM-ddTHH:mm:ssZ},{Math.Min(40, 23 + minute)},{Math.Min(93, 45 + 3 * minute)}\n"
            );
        }

        return csv.ToString();
    }
}
