using CsCheck;
using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Gates.Standings;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;

namespace Traceability.Domain.Tests.Gates;

/// <summary>
/// A stage waits when time alone keeps it shut. Whatever else stands in the way must be done by somebody, so the stage is blocked, however
/// long the wait beside it still lasts.
/// </summary>
public class StageStateTests
{
    private const int Minutes = 60;

    /// <summary>Everything beside the wait that can keep this stage shut while all earlier ones are passed, by its rule.</summary>
    private static readonly IReadOnlyDictionary<string, Action<APart>> Obstacles = new Dictionary<string, Action<APart>>
    {
        [PartUsable.Rule] = part => part.Hold(),
        [NoOpenNonconformity.Rule] = part => part.TryRaise().Accepted(),
        [NoHoldInside.Rule] = part => part.Around = WithInside(part, InsideProblemKind.Hold),
        [LotsInsideReleased.Rule] = part => part.Around = WithInside(part, InsideProblemKind.Quarantine),
        [BuilderQualified.Rule] = part => part.Worker = Somebody.OtherBuilder,
        [InstrumentsUsable.Rule] = part => part.Instruments = [],
    };

    public static TheoryData<string> EveryObstacle => [.. Obstacles.Keys];

    private static APart Waiting(int closesAfterMinutes = 4 * Minutes)
    {
        var trim = ARoute.Stage("trim") with
        {
            Waits = [new("bond", Minutes)],
            Windows = [new("bond", closesAfterMinutes)],
            Qualification = "trimming",
            InstrumentKinds = ["scale"],
        };
        return new APart(ARoute.Of(ARoute.Stage("bond"), trim, ARoute.Stage("pack")))
        {
            Worker = Somebody.Builder.QualifiedFor("trimming"),
            Instruments = [Something.Instrument("scale", new(2026, 1, 10), new(2026, 12, 31))],
        }.Passed("bond");
    }

    private static PartPlacement WithInside(APart part, InsideProblemKind kind) =>
        part.Dossier.Around with
        {
            Inside = [.. part.Dossier.Around.Inside, new(kind, "L-7", "it peels")],
        };

    [Fact]
    public void A_stage_that_time_alone_keeps_shut_waits()
    {
        var gate = Waiting().Gate("trim");

        Assert.Equal([WaitElapsed.Rule], gate.Unmet.Select(c => c.Rule));
        Assert.Equal(StageState.Waiting, gate.State);
    }

    [Theory]
    [MemberData(nameof(EveryObstacle))]
    public void A_stage_that_waits_and_is_kept_shut_by_something_else_as_well_is_blocked(string rule)
    {
        var part = Waiting();
        Obstacles[rule](part);

        var gate = part.Gate("trim");

        Assert.Equal([WaitElapsed.Rule, rule], gate.Unmet.Select(c => c.Rule).OrderBy(r => r != WaitElapsed.Rule));
        Assert.Equal(StageState.Blocked, gate.State);
    }

    [Fact]
    public void A_stage_whose_window_closed_while_it_waited_is_blocked()
    {
        var part = Waiting(closesAfterMinutes: Minutes / 2);
        part.Bench.Later(Minutes / 2 + 1);

        Assert.Equal([WaitElapsed.Rule, WindowOpen.Rule], part.Gate("trim").Unmet.Select(c => c.Rule));
        Assert.Equal(StageState.Blocked, part.Gate("trim").State);
    }

    [Fact]
    public void A_part_whose_next_stage_waits_and_has_a_hold_inside_does_not_go_on_by_itself()
    {
        var part = Waiting().Holding(InsideProblemKind.Hold);

        Assert.Equal(
            (StandingCode.Held, null),
            (Standing.Of(part.Dossier, part.Context).Code, Standing.Of(part.Dossier, part.Context).Until)
        );
        Assert.Equal(StageState.Blocked, StageGrounds.Of(part.Dossier, part.Context)!.State);
        Assert.Null(StageGrounds.Of(part.Dossier, part.Context)!.OpensAt);
    }

    [Fact]
    public void A_stage_whose_earlier_stages_are_missing_comes_later_whatever_else_keeps_it_shut()
    {
        var part = Waiting();
        part.Hold();

        Assert.Equal(StageState.Later, part.Gate("pack").State);
    }

    [Fact]
    public void Of_any_obstacles_one_blocks_the_stage_and_without_any_it_waits_until_the_wait_is_over() =>
        Gen.Select(Gen.Bool.Array[Obstacles.Count], Gen.Int[0, 2 * Minutes])
            .Sample(
                (present, minutes) =>
                {
                    var part = Waiting();
                    part.Bench.Later(minutes);
                    foreach (var obstacle in Obstacles.Values.Where((_, i) => present[i]))
                    {
                        obstacle(part);
                    }

                    var expected =
                        present.Contains(true) ? StageState.Blocked
                        : minutes < Minutes ? StageState.Waiting
                        : StageState.Open;
                    Assert.Equal(expected, part.Gate("trim").State);
                }
            );
}
