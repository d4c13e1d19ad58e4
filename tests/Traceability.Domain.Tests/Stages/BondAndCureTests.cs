using Traceability.Domain.Stages.Methods;
using Traceability.Domain.Tests.Gates.Vocabulary;

namespace Traceability.Domain.Tests.Stages;

public class BondAndCureTests
{
    private static StageInput Bonding => Judging.Nominal("TARN-2", "diaphragm", "ring-bond");

    private static StageInput Curing => Judging.Nominal("TARN-2", "diaphragm", "cure");

    private static StageInput With(int? mixedMinutesAgo, int? potLifeMinutes) =>
        Bonding with
        {
            Inside = new Dictionary<string, FittedThing>
            {
                ["adhesive"] = new FittedLot(
                    "adhesive",
                    Something
                        .Lot(
                            "adhesive",
                            "adhesive",
                            mixedAt: mixedMinutesAgo is { } ago ? Bonding.OpenedAt.AddMinutes(-ago) : null,
                            potLifeMinutes: potLifeMinutes
                        )
                        .Lot
                ),
            },
        };

    [Theory]
    [InlineData(44, true)]
    [InlineData(45, true)]
    [InlineData(46, false)]
    public void An_adhesive_past_its_pot_life_fails(int minutes, bool passes) =>
        Assert.Equal(passes, Bonding.WithLimits("minutesSinceMixing", null, null).With(("minutesSinceMixing", minutes)).Passes());

    [Theory]
    [InlineData(null, 60, 10, "50")]
    [InlineData(12, 60, 10, "48")]
    [InlineData(5, 60, 10, "50")]
    [InlineData(12, null, 10, "33")]
    [InlineData(null, null, 10, "35")]
    public void Pot_life_is_the_lot_s_before_the_route_s_and_the_longer_time_counts(
        int? mixedAgo,
        int? potLife,
        int entered,
        string left
    ) => Assert.Equal(left, With(mixedAgo, potLife).With(("minutesSinceMixing", entered)).Judge().Digits("potLifeLeftMinutes"));

    [Fact]
    public void Two_clocks_at_odds_are_told()
    {
        Assert.Empty(With(15, 60).Judge().Findings);
        Assert.Contains(
            "10 min since mixing were entered, by the clock of lot L-7 it was 16 min",
            Assert.Single(With(16, 60).Judge().Findings).Text,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_lot_mixed_after_the_work_says_nothing_of_it() => Assert.Equal("50", With(-30, 60).Judge().Digits("potLifeLeftMinutes"));

    [Fact]
    public void Time_before_mixing_is_not_judged() => Bonding.With(("minutesSinceMixing", -1)).IsNotJudged("cannot be");

    [Theory]
    [InlineData(239.99, false)]
    [InlineData(240, true)]
    [InlineData(1440, true)]
    public void A_cure_is_judged_by_its_time_on_the_plate(double minutes, bool passes) =>
        Assert.Equal(passes, (Curing with { ClosedAt = Curing.OpenedAt.AddMinutes(minutes) }).Passes());

    [Fact]
    public void Each_run_on_the_plate_is_judged_and_says_which_it_is()
    {
        var second = Curing with { AttemptNumber = 2, ClosedAt = Curing.OpenedAt.AddMinutes(300) };
        Assert.Equal("300", second.Judge().Digits("plateMinutes"));
        Assert.Equal("run 2 on the plate", Assert.Single(second.Judge().Findings).Text);
    }

    [Fact]
    public void A_cure_may_be_run_again_until_the_work_went_on_and_the_rest_counts_from_the_last_run()
    {
        var part = new APart(
            ARoute.Of(ARoute.Stage("cure") with { Repeatable = true }, ARoute.Stage("trim") with { Waits = [new("cure", 60)] })
        ).Passed("cure");
        part.Bench.Later(50);
        part.Passed("cure");
        part.Bench.Later(59);
        Assert.False(part.Gate("trim").Open);
        part.Bench.Later(1);
        part.Opened("trim");
        Assert.False(part.Gate("cure").Open);
        part.TryClose().Accepted();
        part.TryOpen("cure").IsRefused(Domain.Work.RefusalKind.Conflict, "Cure was passed");
    }
}
