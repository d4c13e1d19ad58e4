using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;

namespace Traceability.Domain.Tests.Gates;

/// <summary>A stage that may be run again after a pass (a second cure), as long as no later stage was begun since.</summary>
public class RepeatedStageTests
{
    private static APart Cured =>
        new APart(ARoute.Of(ARoute.Stage("bond"), ARoute.Stage("cure") with { Repeatable = true }, ARoute.Stage("trim"))).Passed(
            "bond",
            "cure"
        );

    [Fact]
    public void It_may_be_run_again_after_a_run_that_was_abandoned()
    {
        var part = Cured.Opened("cure");
        part.TryAbandon().Accepted();

        part.Rule("cure", NotPassedYet.Rule).IsMet();
        part.TryOpen("cure").Accepted();
    }

    [Fact]
    public void It_is_not_run_again_once_a_later_stage_was_begun()
    {
        var part = Cured.Opened("trim");
        part.TryAbandon().Accepted();

        part.Rule("cure", NotPassedYet.Rule).IsNotMet("Cure was passed");
    }

    [Fact]
    public void A_later_stage_that_was_begun_before_the_pass_that_counts_does_not_stand_in_its_way()
    {
        var part = Cured.Passed("trim");
        part.TryRaise().Accepted();
        part.Decided(DispositionKind.Rework, "cure").Passed("cure");

        part.Rule("cure", NotPassedYet.Rule).IsMet();
    }
}
