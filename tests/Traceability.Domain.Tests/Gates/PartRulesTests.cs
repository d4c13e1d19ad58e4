using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;

namespace Traceability.Domain.Tests.Gates;

public class PartRulesTests
{
    private static APart OnItsWay => new APart(ARoute.Plain).Passed("mount");

    private static APart Testing(int? allowed = 2) =>
        new(ARoute.Of(ARoute.Stage("insulation").Measuring("insulationGohm", 100, null) with { AllowedAttempts = allowed }));

    [Fact]
    public void A_stage_out_of_order_is_refused_with_what_comes_first()
    {
        var part = new APart(ARoute.Plain);

        part.Rule("trim", EarlierStagesPassed.Rule).IsNotMet("not passed yet: Mount, Tune");
        Assert.Equal("next is Mount", part.Rule("trim", EarlierStagesPassed.Rule).Remedy);
        Assert.Equal(StageState.Later, part.Gate("trim").State);
        part.TryOpen("trim").IsRefused(RefusalKind.Conflict, "Mount, Tune", "Nothing was recorded");
    }

    [Fact]
    public void Skipping_any_one_stage_is_refused()
    {
        var part = OnItsWay;

        part.TryOpen("trim").IsRefused(RefusalKind.Conflict, "not passed yet: Tune");
        part.TryOpen("tune").Accepted();
    }

    [Fact]
    public void A_stage_is_not_done_twice()
    {
        var part = OnItsWay;

        part.Rule("mount", NotPassedYet.Rule).IsNotMet("Mount was passed on 2 Mar 2026, 08:00");
        Assert.Equal("next is Tune", part.Rule("mount", NotPassedYet.Rule).Remedy);
        Assert.Equal(StageState.Passed, part.Gate("mount").State);
        part.TryOpen("mount").IsRefused(RefusalKind.Conflict, "Mount was passed");
    }

    [Fact]
    public void A_finished_part_says_so_when_a_stage_is_asked_for_again() =>
        Assert.Equal(
            "the part is finished",
            new APart(ARoute.Plain).Passed("mount", "tune", "trim").Rule("trim", NotPassedYet.Rule).Remedy
        );

    [Fact]
    public void A_stage_the_route_does_not_have_is_refused_with_those_it_has() =>
        OnItsWay.TryOpen("polish").IsRefused(RefusalKind.Invalid, "no stage 'polish'", "mount, tune, trim");

    [Fact]
    public void Two_builders_never_hold_the_same_part()
    {
        var part = OnItsWay.Opened("tune");
        part.Worker = Somebody.OtherBuilder;

        part.Rule("tune", OneAttemptAtATime.Rule).IsNotMet("Tune is open at ST-1 since 2 Mar 2026, 08:00");
        part.TryOpen("tune").IsRefused(RefusalKind.Conflict, "Tune is open at ST-1");
        Assert.Single(part.Dossier.Attempts, a => a.Ending is null);
    }

    [Fact]
    public void A_held_part_is_neither_started_nor_ended_until_the_hold_is_lifted()
    {
        var part = OnItsWay;
        var hold = part.Hold();

        part.TryOpen("tune").IsRefused(RefusalKind.Conflict, "C-1 is on hold: looks odd");
        part.Lift(hold);
        part.Opened("tune");
        hold = part.Hold();
        part.TryClose().IsRefused(RefusalKind.Conflict, "C-1 is on hold");
        part.Lift(hold);
        part.TryClose().Accepted();
    }

    [Fact]
    public void A_scrapped_part_is_not_worked_on()
    {
        var part = OnItsWay;
        part.TryRaise().Accepted();
        part.Decided(DispositionKind.Scrap);

        part.Rule("tune", PartUsable.Rule).IsNotMet("C-1 was scrapped");
        part.TryOpen("tune").IsRefused(RefusalKind.Conflict, "C-1 was scrapped");
    }

    [Fact]
    public void A_shipped_part_is_worked_on_again_only_after_it_came_back()
    {
        var part = OnItsWay.Shipped();

        part.TryOpen("tune").IsRefused(RefusalKind.Conflict, "C-1 has left the workshop");
        part.CameBack().TryOpen("tune").Accepted();
    }

    [Fact]
    public void A_part_fitted_in_another_is_not_worked_on()
    {
        var part = OnItsWay.FittedIn("U-1");

        part.TryOpen("tune").IsRefused(RefusalKind.Conflict, "C-1 is fitted in U-1");
        part.FittedIn(null).TryOpen("tune").Accepted();
    }

    [Theory]
    [InlineData(InsideProblemKind.Hold, NoHoldInside.Rule, "on hold: L-7 (it peels)")]
    [InlineData(InsideProblemKind.Quarantine, LotsInsideReleased.Rule, "in quarantine: lot L-7 (it peels)")]
    [InlineData(InsideProblemKind.Nonconformity, NoOpenNonconformity.Rule, "on L-7 inside it: it peels")]
    public void A_problem_inside_stops_start_and_end_of_the_part_around_it(InsideProblemKind kind, string rule, string words)
    {
        OnItsWay.Rule("tune", rule).IsMet();

        var starting = OnItsWay.Holding(kind);
        starting.Rule("tune", rule).IsNotMet(words);
        starting.TryOpen("tune").IsRefused(RefusalKind.Conflict, words);

        var ending = OnItsWay.Opened("tune").Holding(kind);
        ending.EndRule("tune", rule).IsNotMet(words);
        ending.TryClose().IsRefused(RefusalKind.Conflict, words);
    }

    [Fact]
    public void An_open_nonconformity_stops_the_part_until_it_is_decided_on()
    {
        var part = OnItsWay;
        part.TryRaise().Accepted();

        part.TryOpen("tune").IsRefused(RefusalKind.Conflict, "on C-1: a scratch across the film");
        part.Decided(DispositionKind.Concession).Opened("tune");
    }

    [Fact]
    public void A_stage_that_failed_is_named_without_its_list_of_values_and_what_a_person_wrote_in_full()
    {
        var failed = Testing().Failed("insulation");
        Assert.Equal("open nonconformity on C-1: Insulation failed", failed.Rule("insulation", NoOpenNonconformity.Rule).Because);
        Assert.Contains("insulationGohm", failed.OpenNonconformity.Description, StringComparison.Ordinal);

        var part = OnItsWay;
        part.TryRaise(description: "two marks: front and rear").Accepted();
        part.Rule("tune", NoOpenNonconformity.Rule).IsNotMet("two marks: front and rear");
    }

    [Fact]
    public void A_nonconformity_seen_during_an_attempt_stops_its_end()
    {
        var part = OnItsWay.Opened("tune");
        part.TryRaise().Accepted();

        part.TryClose().IsRefused(RefusalKind.Conflict, "a scratch across the film");
    }

    [Fact]
    public void The_last_allowed_attempt_may_be_made_and_the_one_after_it_not()
    {
        var part = Testing(allowed: 2).Failed("insulation").Decided(DispositionKind.Repair);

        Assert.Equal("1 of 2 attempts failed so far", part.Rule("insulation", AttemptsLeft.Rule).Because);
        part.Failed("insulation");
        part.Rule("insulation", AttemptsLeft.Rule).IsNotMet("all 2 attempts failed");
    }

    [Fact]
    public void An_abandoned_attempt_is_none_of_those_allowed()
    {
        var part = Testing(allowed: 1).Opened("insulation");
        part.TryAbandon().Accepted();

        part.Rule("insulation", AttemptsLeft.Rule).IsMet();
    }

    [Fact]
    public void Attempts_are_not_counted_where_the_route_sets_no_limit() =>
        Assert.DoesNotContain(Testing(allowed: null).Gate("insulation").Checks, c => c.Rule == AttemptsLeft.Rule);
}
