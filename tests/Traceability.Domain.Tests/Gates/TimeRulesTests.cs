using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;

namespace Traceability.Domain.Tests.Gates;

public class TimeRulesTests
{
    private const double ASecond = 1 / 60.0;

    private static APart Waiting =>
        new APart(ARoute.Of(ARoute.Stage("bond"), ARoute.Stage("trim") with { Waits = [new("bond", 60)] })).Passed("bond");

    private static APart InWindow =>
        new APart(ARoute.Of(ARoute.Stage("soak"), ARoute.Stage("insulation") with { Windows = [new("soak", 30)] })).Passed("soak");

    private static APart Curing => new APart(ARoute.Of(ARoute.Stage("cure") with { MinimumOpenMinutes = 240 })).Opened("cure");

    [Theory]
    [InlineData(60 - ASecond, false)]
    [InlineData(60, true)]
    [InlineData(60 + ASecond, true)]
    public void A_wait_is_over_on_the_minute_itself(double minutes, bool over)
    {
        var part = Waiting;
        part.Bench.Later(minutes);

        Assert.Equal(over, part.Rule("trim", WaitElapsed.Rule).Met);
        Assert.Equal(over ? StageState.Open : StageState.Waiting, part.Gate("trim").State);
        Assert.Equal(over, part.TryOpen("trim").Refusal is null);
    }

    [Fact]
    public void A_wait_says_until_when_in_workshop_time_and_when_the_gate_opens()
    {
        var bench = new Bench { Calendar = new(TimeZoneInfo.CreateCustomTimeZone("two hours ahead", TimeSpan.FromHours(2), null, null)) };
        var part = new APart(Waiting.Dossier.Route, bench).Passed("bond");

        var check = part.Rule("trim", WaitElapsed.Rule);

        check.IsNotMet("60 min after Bond", "2 Mar 2026, 11:00");
        Assert.Equal("wait until 2 Mar 2026, 11:00", check.Remedy);
        Assert.Equal(bench.Now.AddHours(1), part.Gate("trim").OpensAt);
    }

    [Fact]
    public void Of_two_waits_the_one_that_ends_last_counts()
    {
        var part = new APart(
            ARoute.Of(ARoute.Stage("bond"), ARoute.Stage("dry"), ARoute.Stage("trim") with { Waits = [new("bond", 60), new("dry", 10)] })
        ).Passed("bond", "dry");
        part.Bench.Later(30);

        part.Rule("trim", WaitElapsed.Rule).IsNotMet("60 min after Bond");
    }

    [Fact]
    public void A_wait_counts_from_the_pass_that_counts_not_from_one_that_a_rework_undid()
    {
        var part = Waiting;
        part.Bench.Later(60);
        part.TryRaise().Accepted();
        part.Decided(DispositionKind.Rework, "bond").Passed("bond");

        part.Rule("trim", WaitElapsed.Rule).IsNotMet();
    }

    [Theory]
    [InlineData(30 - ASecond, true)]
    [InlineData(30, true)]
    [InlineData(30 + ASecond, false)]
    public void A_window_closes_only_after_its_last_minute(double minutes, bool inTime)
    {
        var part = InWindow;
        part.Bench.Later(minutes);

        Assert.Equal(inTime, part.Rule("insulation", WindowOpen.Rule).Met);
        Assert.Equal(inTime ? StageState.Open : StageState.Blocked, part.Gate("insulation").State);
        Assert.Equal(inTime, part.TryOpen("insulation").Refusal is null);
    }

    [Fact]
    public void A_window_says_when_it_closes_and_once_closed_where_to_go_back_to()
    {
        var part = InWindow;
        Assert.Equal(part.Bench.Now.AddMinutes(30), part.Gate("insulation").ClosesAt);
        part.Bench.Later(31);

        var check = part.Rule("insulation", WindowOpen.Rule);

        check.IsNotMet("within 30 min of Soak", "too late");
        Assert.Contains("back to Soak", check.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_two_windows_the_one_that_closes_first_counts()
    {
        var part = new APart(
            ARoute.Of(
                ARoute.Stage("warm"),
                ARoute.Stage("humid"),
                ARoute.Stage("test") with
                {
                    Windows = [new("warm", 20), new("humid", 30)],
                }
            )
        ).Passed("warm", "humid");
        part.Bench.Later(25);

        part.Rule("test", WindowOpen.Rule).IsNotMet("Warm");
    }

    [Fact]
    public void A_stage_that_started_inside_its_window_may_end_after_it()
    {
        var part = InWindow.Opened("insulation");
        part.Bench.Later(120);

        part.TryClose().Accepted();
    }

    [Theory]
    [InlineData(240 - ASecond, false)]
    [InlineData(240, true)]
    [InlineData(240 + ASecond, true)]
    public void A_cure_may_end_on_the_minute_itself(double minutes, bool longEnough)
    {
        var part = Curing;
        part.Bench.Later(minutes);

        Assert.Equal(longEnough, part.EndRule("cure", MinimumTimeOpen.Rule).Met);
        Assert.Equal(longEnough, part.TryClose().Refusal is null);
    }

    [Fact]
    public void A_cure_that_is_not_over_says_when_it_may_be_closed()
    {
        var part = Curing;
        part.Bench.Later(10);

        var check = part.EndRule("cure", MinimumTimeOpen.Rule);

        check.IsNotMet("lasts at least 240 min", "2 Mar 2026, 12:00");
        Assert.Equal("close it at 2 Mar 2026, 12:00 or later", check.Remedy);
    }

    [Fact]
    public void Neither_wait_nor_window_speaks_where_the_route_names_none()
    {
        var rules = new APart(ARoute.Plain).Passed("mount").Gate("tune").Checks.Select(c => c.Rule).ToList();

        Assert.DoesNotContain(WaitElapsed.Rule, rules);
        Assert.DoesNotContain(WindowOpen.Rule, rules);
    }
}
