using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;

namespace Traceability.Domain.Tests.Work;

public class TimingTests
{
    private static readonly DateTimeOffset Now = new Bench().Now;

    [Theory]
    [InlineData(-1, true)]
    [InlineData(119, true)]
    [InlineData(120, true)]
    [InlineData(121, false)]
    public void Nothing_happens_in_the_future_beyond_what_clocks_differ_by(int secondsAhead, bool believed)
    {
        foreach (var actor in new[] { Somebody.Builder, Somebody.Importer })
        {
            var problem = Timing.Problem(Now.AddSeconds(secondsAhead), Now, actor);

            Assert.Equal(believed, problem is null);
            Assert.True(believed || problem!.Kind == RefusalKind.Invalid && problem.Errors.ContainsKey("occurredAt"));
        }
    }

    [Theory]
    [InlineData(119, true)]
    [InlineData(120, true)]
    [InlineData(121, false)]
    public void Only_the_importer_says_that_something_happened_in_the_past(int secondsAgo, bool believed)
    {
        Assert.Equal(believed, Timing.Problem(Now.AddSeconds(-secondsAgo), Now, Somebody.Builder) is null);
        Assert.Null(Timing.Problem(Now.AddSeconds(-secondsAgo), Now, Somebody.Importer));
        Assert.Null(Timing.Problem(Now.AddYears(-9), Now, Somebody.Importer));
    }

    [Fact]
    public void A_past_time_is_for_the_importer_and_says_so()
    {
        var problem = Timing.Problem(Now.AddDays(-1), Now, Somebody.QualityLead)!;

        Assert.Equal(RefusalKind.Forbidden, problem.Kind);
        Assert.Contains("only the importer role", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void No_stated_time_is_no_problem() => Assert.Null(Timing.Problem(null, Now, Somebody.Builder));

    [Theory]
    [InlineData(121, false)]
    [InlineData(120, true)]
    [InlineData(119, true)]
    public void A_stage_does_not_begin_before_the_last_thing_that_happened_to_the_part(int secondsBefore, bool inOrder)
    {
        var part = new APart(ARoute.Plain) { Worker = Somebody.Importer }.Passed("mount");

        var decision = part.TryOpen("tune", part.Bench.Now.AddSeconds(-secondsBefore));

        Assert.Equal(inOrder, decision.Refusal is null);
        Assert.True(inOrder || decision.Refusal!.Message.Contains("earlier than the last event on C-1", StringComparison.Ordinal));
    }

    [Fact]
    public void A_part_does_not_begin_its_first_stage_before_it_was_registered()
    {
        var part = new APart(ARoute.Plain);

        part.TryOpen("mount", part.Bench.Now.AddHours(-1)).IsRefused(RefusalKind.Conflict, "earlier than the last event");
    }
}
