using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Standings;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;

namespace Traceability.Domain.Tests.Gates;

public class StandingTests
{
    private static APart Part =>
        new(
            ARoute.Of(
                ARoute.Stage("mount"),
                ARoute.Stage("cure") with
                {
                    MinimumOpenMinutes = 60,
                },
                ARoute.Stage("tune") with
                {
                    Waits = [new("cure", 30)],
                }
            )
        );

    private static APart Unit =>
        new(ARoute.Of(ARoute.Stage("body"), ARoute.Stage("inspect").Measuring("noiseDba", 0, 20)) with { Kind = PartKinds.Unit });

    private static APart FinishedUnit => Unit.Passed("body", "inspect");

    private static Standing Of(APart part) => Standing.Of(part.Dossier, part.Context);

    [Fact]
    public void A_part_on_its_way_is_at_its_stage() => Assert.Equal(new Standing(StandingCode.InWork, Where: "Mount"), Of(Part));

    [Fact]
    public void A_part_waits_while_a_cure_is_under_way_and_while_the_next_stage_must_wait()
    {
        var part = Part.Passed("mount").Opened("cure");
        Assert.Equal((StandingCode.Waiting, part.Bench.Now.AddMinutes(60), "Cure"), (Of(part).Code, Of(part).Until, Of(part).Where));
        part.Bench.Later(60);
        Assert.Equal((StandingCode.InWork, null), (Of(part).Code, Of(part).Until));
        part.TryClose().Accepted();
        Assert.Equal((StandingCode.Waiting, part.Bench.Now.AddMinutes(30), "Tune"), (Of(part).Code, Of(part).Until, Of(part).Where));
        part.Bench.Later(30);
        Assert.Equal(StandingCode.InWork, Of(part).Code);
    }

    [Fact]
    public void Who_asks_makes_no_difference()
    {
        var part = new APart(ARoute.Of(ARoute.Stage("mount") with { Qualification = "mounting" }));
        Assert.Equal(StandingCode.InWork, Of(part).Code);
        Assert.Equal(Of(part), Standing.Of(part.Dossier, part.Context with { Actor = Somebody.OtherBuilder }));
    }

    [Fact]
    public void A_finished_part_is_free_and_a_finished_unit_is_in_stock()
    {
        Assert.Equal(new Standing(StandingCode.Finished), Of(new APart(ARoute.Plain).Passed("mount", "tune", "trim")));
        Assert.Equal(new Standing(StandingCode.Stock), Of(FinishedUnit));
        Assert.True(Of(FinishedUnit).MayGoOn);
        Assert.Equal(
            new Standing(StandingCode.Fitted, Where: "C-9"),
            Of(new APart(ARoute.Plain).Passed("mount", "tune", "trim").FittedIn("C-9"))
        );
    }

    [Fact]
    public void A_hold_and_a_quarantine_count_from_inside_and_a_film_lot_from_itself()
    {
        var held = FinishedUnit;
        held.Hold("dropped");
        Assert.Equal(new Standing(StandingCode.Held, Because: "dropped"), Of(held));
        Assert.Equal(new Standing(StandingCode.Held, Because: "L-7: it peels"), Of(FinishedUnit.Holding(InsideProblemKind.Hold)));
        Assert.Equal(
            new Standing(StandingCode.Quarantined, Because: "L-7: it peels"),
            Of(FinishedUnit.Holding(InsideProblemKind.Quarantine))
        );
        var film = new APart(ARoute.Plain).Passed("mount", "tune", "trim");
        film.Around = PartPlacement.None with { OnItself = [new(InsideProblemKind.Quarantine, "", "pinholes")] };
        Assert.Equal(new Standing(StandingCode.Quarantined, Because: "pinholes"), Of(film));
    }

    [Fact]
    public void A_nonconformity_blocks_and_says_what_was_found()
    {
        var part = FinishedUnit;
        part.TryRaise(description: "a dent").Accepted();
        Assert.Equal((StandingCode.Blocked, true), (Of(part).Code, Of(part).Because!.Contains("a dent", StringComparison.Ordinal)));
        Assert.Equal(StandingCode.Blocked, Of(FinishedUnit.Holding(InsideProblemKind.Nonconformity)).Code);
        Assert.Equal(StandingCode.Scrapped, Of(part.Decided(DispositionKind.Scrap)).Code);
    }

    [Fact]
    public void A_unit_that_came_back_is_returned_until_it_is_shipped_again_whatever_is_done_with_it_meanwhile()
    {
        var unit = FinishedUnit.Certified().Shipped();
        Assert.Equal(new Standing(StandingCode.Shipped), Of(unit));
        unit.CameBack();
        Assert.Equal(new Standing(StandingCode.Returned, Because: "crackles"), Of(unit));
        unit.Hold("flux seen");
        Assert.Equal("crackles; flux seen", Of(unit).Because);
        Assert.NotNull(unit.Dossier.LastShipment);
        unit.Shipped();
        Assert.Equal((StandingCode.Shipped, "flux seen"), (Of(unit).Code, Of(unit).Because));
    }

    [Fact]
    public void What_is_inside_goes_where_the_thing_around_it_went()
    {
        var gone = new Departure(new(2026, 2, 1, 8, 0, 0, TimeSpan.Zero), "Studio Reed");
        var inside = new APart(ARoute.Plain).Passed("mount", "tune", "trim");
        Standing In(Exit exit)
        {
            inside.Around = PartPlacement.None with { FittedInSerial = "C-9", Outermost = new("U-9", exit) };
            return Of(inside);
        }

        Assert.Equal(new Standing(StandingCode.Fitted, Where: "C-9"), In(Exit.None));
        Assert.Equal(new Standing(StandingCode.Shipped, Where: "U-9, Studio Reed"), In(new(null, gone)));
        Assert.Equal(
            new Standing(StandingCode.Returned, Because: "hums", Where: "U-9, Studio Reed"),
            In(new(null, gone with { ReturnedAt = gone.At.AddDays(9), Complaint = "hums" }))
        );
        Assert.Equal(new Standing(StandingCode.Scrapped, Because: "crushed", Where: "U-9"), In(new("crushed", gone)));
    }
}
