using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Standings;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;

namespace Traceability.Domain.Tests.Gates;

public class StandingGroundsTests
{
    private static APart OnItsWay => new APart(ARoute.Plain).Passed("mount");

    private static APart Finished => new APart(ARoute.Plain).Passed("mount", "tune", "trim");

    private static Standing Of(APart part) => Standing.Of(part.Dossier, part.Context);

    [Fact]
    public void A_part_that_is_held_says_where_it_is_its_stage_or_what_it_is_fitted_in()
    {
        Assert.Equal("Tune", Of(OnItsWay.Holding(InsideProblemKind.Hold)).Where);
        Assert.Equal("U-1", Of(Finished.Holding(InsideProblemKind.Hold).FittedIn("U-1")).Where);
        Assert.Equal(
            "U-1",
            Standing
                .Of(
                    new StandingGrounds
                    {
                        Holds = ["odd"],
                        FittedIn = "U-1",
                        Stage = new("Tune", StageState.Open),
                    }
                )
                .Where
        );
    }

    [Fact]
    public void What_is_fitted_in_another_part_has_no_stage_of_its_own()
    {
        var part = OnItsWay;
        Assert.NotNull(StandingGrounds.Of(part.Dossier, part.Context).Stage);

        part.FittedIn("U-1");
        Assert.Null(StandingGrounds.Of(part.Dossier, part.Context).Stage);
    }

    [Fact]
    public void Doubt_about_an_instrument_blocks_what_is_finished_and_lets_work_go_on()
    {
        Assert.Equal(StandingCode.Blocked, Of(Finished.InDoubt()).Code);
        Assert.Equal(StandingCode.InWork, Of(OnItsWay.InDoubt()).Code);
    }

    [Fact]
    public void A_stage_that_may_start_gives_no_reason_against_it()
    {
        var part = OnItsWay;

        Assert.Equal(new StageGrounds("Tune", StageState.Open), StageGrounds.Of(part.Dossier, part.Context));
    }

    [Theory]
    [InlineData(StandingCode.InWork, true)]
    [InlineData(StandingCode.Finished, true)]
    [InlineData(StandingCode.Stock, true)]
    [InlineData(StandingCode.Waiting, false)]
    [InlineData(StandingCode.Fitted, false)]
    [InlineData(StandingCode.Held, false)]
    public void A_part_in_work_finished_or_in_stock_may_go_on(StandingCode code, bool mayGoOn) =>
        Assert.Equal(mayGoOn, new Standing(code).MayGoOn);

    [Fact]
    public void Every_state_of_a_part_is_found_again_by_its_word() =>
        Assert.All(Enum.GetValues<PartState>(), s => Assert.Equal(s, Words.PartStateOf(Words.Of(s))));

    [Fact]
    public void A_gate_opens_when_the_last_of_its_waits_is_over_and_closes_with_its_first_window()
    {
        var at = new DateTimeOffset(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);
        var gate = new GateVerdict(
            "tune",
            "Tune",
            StageState.Waiting,
            [
                new("wait", false, "", null, at.AddMinutes(10), at.AddMinutes(50)),
                new("another", false, "", null, at.AddMinutes(20), at.AddMinutes(40)),
            ]
        );

        Assert.Equal((at.AddMinutes(20), at.AddMinutes(40)), (gate.OpensAt, gate.ClosesAt));
    }
}
