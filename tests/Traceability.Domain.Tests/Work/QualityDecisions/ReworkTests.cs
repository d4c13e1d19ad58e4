using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;

namespace Traceability.Domain.Tests.Work.QualityDecisions;

/// <summary>What a decision, and taking something out, does to passes that were there before.</summary>
public class ReworkTests
{
    private static APart Four =>
        new(
            ARoute.Of(
                ARoute.Stage("mount"),
                ARoute.Stage("tune").Measuring("resonanceHz", 880, 920),
                ARoute.Stage("bond").Taking("ring", "ring"),
                ARoute.Stage("verify").Measuring("driftPct", -5, 5)
            )
        );

    private static APart FailedLast => Four.Passed("mount", "tune", "bond").Failed("verify");

    [Fact]
    public void A_rework_undoes_the_stage_it_returns_to_and_all_later_ones_and_nothing_earlier()
    {
        var part = FailedLast.Decided(DispositionKind.Rework, "tune");

        Assert.Equal(["mount"], part.Passes);
        Assert.Equal("tune", part.Dossier.NextStage()!.Code);
        part.TryOpen("bond").IsRefused(RefusalKind.Conflict, "not passed yet: Tune");
        Assert.Equal(["mount", "tune", "bond", "verify"], part.Passed("tune", "bond", "verify").Passes);
    }

    [Fact]
    public void What_was_passed_before_a_rework_stays_in_the_history()
    {
        var part = FailedLast;
        var before = part.Dossier.Facts;

        part.Decided(DispositionKind.Rework, "mount");

        Assert.Equal(before, part.Dossier.Facts.Take(before.Count));
        Assert.Equal(4, part.Dossier.Attempts.Count);
    }

    [Fact]
    public void A_rework_that_names_no_stage_returns_where_the_route_says_and_else_to_the_failed_stage()
    {
        Assert.Equal("verify", FailedLast.TryDecide(DispositionKind.Rework).Accepted().ReturnTo);

        var route = Four.Dossier.Route;
        var part = new APart(route with { Stages = [.. route.Stages.Take(3), route.Stages[3] with { ReworkReturnsTo = "bond" }] })
            .Passed("mount", "tune", "bond")
            .Failed("verify");
        Assert.Equal("bond", part.TryDecide(DispositionKind.Rework).Accepted().ReturnTo);
        Assert.Equal(["mount", "tune"], part.Passes);
    }

    [Fact]
    public void A_rework_about_no_stage_must_say_where_to() =>
        Raised().TryDecide(DispositionKind.Rework).IsRefused(RefusalKind.Invalid, "mount, tune, bond, verify");

    [Fact]
    public void A_rework_to_a_stage_the_route_does_not_have_is_refused_with_those_it_has() =>
        FailedLast.TryDecide(DispositionKind.Rework, "polish").IsRefused(RefusalKind.Invalid, "mount, tune, bond, verify");

    [Fact]
    public void A_rework_never_returns_to_a_stage_after_the_one_that_failed()
    {
        var part = Four.Passed("mount", "tune", "bond");
        part.TryCorrect("resonanceHz", "870", Somebody.QualityLead).Accepted();

        part.TryDecide(DispositionKind.Rework, "bond").IsRefused(RefusalKind.Invalid, "after Tune");
        Assert.Equal(["mount"], part.Decided(DispositionKind.Rework, "tune").Passes);
    }

    [Fact]
    public void A_repair_has_the_failed_stage_done_again()
    {
        var part = FailedLast.Decided(DispositionKind.Repair);

        Assert.Equal(["mount", "tune", "bond"], part.Passes);
        part.TryOpen("verify").Accepted();
    }

    [Theory]
    [InlineData(DispositionKind.Rework)]
    [InlineData(DispositionKind.Repair)]
    public void A_stage_with_no_attempt_left_cannot_be_returned_to_or_passed_over(DispositionKind kind)
    {
        var route = Four.Dossier.Route;
        var part = new APart(route with { Stages = [.. route.Stages.Take(3), route.Stages[3] with { AllowedAttempts = 1 }] })
            .Passed("mount", "tune", "bond")
            .Failed("verify");

        part.TryDecide(kind, "mount").IsRefused(RefusalKind.Conflict, "Verify", "no attempt left");
        part.TryDecide(kind).IsRefused(RefusalKind.Conflict, "no attempt left");
        part.TryDecide(DispositionKind.Concession).Accepted();
    }

    [Fact]
    public void Taking_something_out_undoes_the_stage_that_fitted_it_and_all_later_ones_and_nothing_earlier()
    {
        var part = Four.Passed("mount", "tune", "bond", "verify");
        Assert.True(part.Dossier.IsFinished());

        part.TryRemove("ring").Accepted();

        Assert.Equal(["mount", "tune"], part.Passes);
        Assert.Empty(part.Dossier.PresentFittings);
        Assert.True(part.Passed("bond", "verify").Dossier.IsFinished());
    }

    [Fact]
    public void Something_taken_out_and_replaced_before_its_stage_ends_undoes_nothing()
    {
        var part = Four.Passed("mount", "tune").Opened("bond").Filled();
        part.TryRemove("ring").Accepted();
        part.Filled();
        part.TryClose().Accepted();

        Assert.Equal(["mount", "tune", "bond"], part.Passes);
    }

    [Fact]
    public void Nothing_an_earlier_stage_fitted_comes_out_while_a_later_stage_is_open()
    {
        var part = Four.Passed("mount", "tune", "bond").Opened("verify");

        part.TryRemove("ring").IsRefused(RefusalKind.Conflict, "Verify is open", "close or abandon");
        part.TryAbandon().Accepted();
        part.TryRemove("ring").Accepted();
        Assert.Equal(["mount", "tune"], part.Passes);
    }

    [Fact]
    public void Nothing_comes_out_of_a_part_that_is_itself_fitted_in_another() =>
        Four.Passed("mount", "tune", "bond")
            .FittedIn("U-1")
            .TryRemove("ring")
            .IsRefused(RefusalKind.Conflict, "C-1 is fitted in U-1", "take it out");

    [Fact]
    public void Taking_out_what_is_not_there_is_refused_with_what_is()
    {
        Four.TryRemove("ring").IsRefused(RefusalKind.Conflict, "nothing is fitted in C-1");
        Four.Passed("mount", "tune", "bond").TryRemove("rong").IsRefused(RefusalKind.Invalid, "at 'rong'", "filled positions: ring");
        Four.Passed("mount", "tune", "bond").TryRemove("ring", " ").IsRefused(RefusalKind.Invalid, "say why");
    }

    [Fact]
    public void Nothing_comes_out_of_a_part_that_is_scrapped_or_shipped()
    {
        FailedLast.Decided(DispositionKind.Scrap).TryRemove("ring").IsRefused(RefusalKind.Conflict, "C-1 is scrapped");
        Four.Passed("mount", "tune", "bond").Shipped().TryRemove("ring").IsRefused(RefusalKind.Conflict, "C-1 is shipped");
    }

    private static APart Raised()
    {
        var part = Four.Passed("mount", "tune");
        part.TryRaise().Accepted();
        return part;
    }
}
