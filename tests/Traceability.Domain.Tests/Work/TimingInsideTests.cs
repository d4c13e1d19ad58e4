using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;

namespace Traceability.Domain.Tests.Work;

/// <summary>What a machine may say about the past, and what counts as the last thing that happened to a part.</summary>
public class TimingInsideTests
{
    private static readonly DateTimeOffset Now = new Bench().Now;

    [Theory]
    [InlineData(null, null)]
    [InlineData(0, null)]
    [InlineData(-1, RefusalCode.OutOfOrder)]
    [InlineData(3600, null)]
    [InlineData(3720, null)]
    [InlineData(3721, RefusalCode.InvalidRequest)]
    public void A_machine_is_believed_from_the_beginning_until_now(int? secondsAfterTheBeginning, string? refused) =>
        Assert.Equal(
            refused,
            Timing.ProblemInside(secondsAfterTheBeginning is { } s ? Now.AddHours(-1).AddSeconds(s) : null, Now.AddHours(-1), Now)?.Code
        );

    [Fact]
    public void Nothing_was_recorded_before_there_was_a_workshop_and_the_first_moment_may_be_named()
    {
        Assert.Null(Timing.Problem(Timing.Earliest, Now, Somebody.Importer));
        Assert.Equal(RefusalKind.Invalid, Timing.Problem(Timing.Earliest.AddTicks(-1), Now, Somebody.Importer)!.Kind);
    }

    public static TheoryData<string> LastEvents => ["attempt", "ending", "removal", "disposition"];

    [Theory]
    [MemberData(nameof(LastEvents))]
    public void Attempts_their_ends_removals_and_decisions_are_events_that_nothing_later_may_precede(string last)
    {
        var part = new APart(ARoute.Of(ARoute.Stage("mount").Taking("ring", lotKind: "ring").Measuring("gapUm", 1, 2)));
        part.Opened("mount");
        if (last == "attempt")
        {
            Assert.Equal(RefusalCode.OutOfOrder, Before(part));
            return;
        }

        part.Filled().TryRead(("gapUm", "3")).Accepted();
        part.Bench.Later(30);
        part.TryClose().Accepted();
        if (last is "disposition")
        {
            part.Bench.Later(30);
            part.Decided(DispositionKind.Rework, "mount");
        }
        else if (last is "removal")
        {
            part.Bench.Later(30);
            part.TryRemove("ring").Accepted();
        }

        Assert.Equal(RefusalCode.OutOfOrder, Before(part));
    }

    [Fact]
    public void A_hold_is_no_such_event()
    {
        var part = new APart(ARoute.Plain).Passed("mount");
        var closed = part.Bench.Now;
        part.Bench.Later(60);
        part.Hold();

        Assert.Null(Timing.OutOfOrder(part.Dossier, closed));
    }

    private static string? Before(APart part)
    {
        Assert.Null(Timing.OutOfOrder(part.Dossier, part.Bench.Now.AddMinutes(-2)));
        return Timing.OutOfOrder(part.Dossier, part.Bench.Now.AddMinutes(-2).AddTicks(-1))?.Code;
    }
}
