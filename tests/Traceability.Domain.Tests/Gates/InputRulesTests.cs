using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Tests.Gates.Vocabulary;

namespace Traceability.Domain.Tests.Gates;

public class InputRulesTests
{
    private const double ASecond = 1 / 60.0;

    private static readonly DateTimeOffset Eight = new Bench().Now;

    private static APart Stacking =>
        new APart(
            ARoute.Of(
                ARoute
                    .Stage("stack")
                    .Taking("front", partKind: ARoute.ChildKind)
                    .Taking("rear", partKind: ARoute.ChildKind)
                    .Taking("glue", lotKind: "adhesive")
                    .Taking("shim", lotKind: "shim", required: false) with
                {
                    Match = new(["front", "rear"], "resonanceHz", 10m),
                }
            )
        ).Opened("stack");

    private static PartInput Front(decimal resonanceHz = 900m) =>
        Something.Part("front", serial: "D-1", values: ("resonanceHz", resonanceHz));

    private static PartInput Rear(decimal resonanceHz = 900m) =>
        Something.Part("rear", serial: "D-2", values: ("resonanceHz", resonanceHz));

    private static LotInput Glue(DateTimeOffset? expiresAt = null, DateTimeOffset? mixedAt = null, int? potLifeMinutes = null) =>
        Something.Lot("glue", "adhesive", expiresAt, mixedAt, potLifeMinutes);

    private static GateCheck Fits(Input input, double minutesLater = 0)
    {
        var part = Stacking;
        part.Bench.Later(minutesLater);
        var inputs = new Dictionary<string, Input> { [input.Position] = input };
        var verdict = Gatekeeper.EvaluateInputs(part.Dossier, part.StageOf("stack"), part.Context with { Inputs = inputs });
        return verdict.Checks.Single(c => c.Rule == InputsFit.Rule);
    }

    [Theory]
    [InlineData(60 - ASecond, true)]
    [InlineData(60, true)]
    [InlineData(60 + ASecond, false)]
    public void A_lot_may_be_used_up_to_the_moment_at_which_it_expires(double minutes, bool usable)
    {
        var check = Fits(Glue(expiresAt: Eight.AddMinutes(60)), minutes);

        Assert.Equal(usable, check.Met);
        Assert.Contains(usable ? "fits: L-7" : "lot L-7 expired on 2 Mar 2026, 09:00", check.Because, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(40 - ASecond, true)]
    [InlineData(40, true)]
    [InlineData(40 + ASecond, false)]
    public void A_mixed_adhesive_may_be_used_up_to_the_end_of_its_pot_life(double minutes, bool usable)
    {
        var check = Fits(Glue(mixedAt: Eight, potLifeMinutes: 40), minutes);

        Assert.Equal(usable, check.Met);
        Assert.Contains(
            usable ? "fits: L-7" : "past its pot life of 40 min, over at 2 Mar 2026, 08:40",
            check.Because,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_lot_that_expired_after_it_was_fitted_does_not_stop_the_stage() =>
        Fits(Glue(expiresAt: Eight) with { AlreadyFittedHere = true }, 60).IsMet();

    [Fact]
    public void A_lot_in_quarantine_on_hold_or_of_another_kind_does_not_fit()
    {
        Fits(Glue()).IsMet();
        Fits(Glue() with { State = LotState.Quarantined }).IsNotMet("lot L-7 is in quarantine");
        Fits(Glue() with { Holds = ["it slips"] }).IsNotMet("lot L-7 is on hold: it slips");
        Fits(Something.Lot("glue", "screws")).IsNotMet("lot L-7 is screws", "takes a adhesive lot");
        Fits(Something.Lot("front", "screws")).IsNotMet("this slot takes a finished diaphragm");
    }

    [Fact]
    public void A_part_that_is_not_free_finished_and_of_this_model_does_not_fit()
    {
        Fits(Front()).IsMet();
        Fits(Front() with { FittedInSerial = "C-9" }).IsNotMet("D-1 is already fitted in C-9");
        Fits(Front() with { RouteFinished = false, State = PartState.Ready }).IsNotMet("has not passed its own route yet");
        Fits(Front() with { Model = "M-2" }).IsNotMet("D-1 is for model M-2, not M-1");
        Fits(Front() with { Kind = PartKinds.BoardSet }).IsNotMet("D-1 is a board-set", "takes a finished diaphragm");
        Fits(Front() with { Position = "glue" }).IsNotMet("takes a adhesive lot");
    }

    [Theory]
    [InlineData(PartState.Scrapped, "scrapped")]
    [InlineData(PartState.Shipped, "shipped")]
    [InlineData(PartState.OnHold, "on-hold")]
    [InlineData(PartState.Nonconforming, "nonconforming")]
    public void A_part_in_no_state_to_be_used_does_not_fit(PartState state, string word) =>
        Fits(Front() with { State = state }).IsNotMet($"D-1 is {word}");

    [Fact]
    public void A_part_with_a_problem_inside_does_not_fit() =>
        Fits(Front() with { Problems = [new(InsideProblemKind.Hold, "F-3", "pinholes")] }).IsNotMet("D-1 holds F-3: pinholes");

    [Fact]
    public void A_part_cannot_be_fitted_in_itself()
    {
        var part = new APart(ARoute.Of(ARoute.Stage("stack").Taking("inner", partKind: PartKinds.Capsule))).Opened("stack");
        var itself = Something.Part("inner", PartKinds.Capsule, part.Dossier.Part.Serial) with { PartId = part.Dossier.Part.Id };

        part.TryFit(itself).IsRefused(Domain.Work.RefusalKind.Conflict, "C-1 cannot be fitted in itself");
    }

    [Fact]
    public void One_part_cannot_be_fitted_at_two_positions()
    {
        var part = Stacking;
        var front = Front();

        part.TryFit(front, front with { Position = "rear" })
            .IsRefused(Domain.Work.RefusalKind.Conflict, "D-1 was named for front and rear");
    }

    [Fact]
    public void One_lot_may_be_fitted_at_two_positions()
    {
        var part = new APart(ARoute.Of(ARoute.Stage("stack").Taking("left", "screws").Taking("right", "screws"))).Opened("stack");
        var screws = Something.Lot("left", "screws");

        part.TryFit(screws, screws with { Position = "right" }).Accepted();
    }

    [Fact]
    public void A_stage_does_not_end_with_an_empty_slot_that_must_be_filled()
    {
        var part = Stacking;
        part.TryFit(Front(), Glue()).Accepted();

        part.EndRule("stack", InputsFit.Rule).IsNotMet("still empty: rear");
        part.TryClose().IsRefused(Domain.Work.RefusalKind.Conflict, "still empty: rear");
        part.TryFit(Rear()).Accepted();
        part.EndRule("stack", InputsFit.Rule).IsMet();
        part.TryClose().Accepted();
    }

    [Fact]
    public void A_stage_with_empty_slots_does_not_end_although_the_caller_named_no_inputs()
    {
        var part = Stacking;

        var gate = Gatekeeper.EvaluateEnd(part.Dossier, part.StageOf("stack"), part.Context with { Inputs = null });

        gate.Checks.Single(c => c.Rule == InputsFit.Rule).IsNotMet("still empty: front, rear, glue");
    }

    [Theory]
    [InlineData("909.99", true)]
    [InlineData("910.00", true)]
    [InlineData("910.01", false)]
    [InlineData("890.00", true)]
    [InlineData("889.99", false)]
    public void Front_and_rear_match_up_to_the_difference_itself(string rear, bool matches)
    {
        var part = Stacking;
        part.TryFit(Front(900m), Rear(decimal.Parse(rear, System.Globalization.CultureInfo.InvariantCulture)), Glue()).Accepted();

        Assert.Equal(matches, part.EndRule("stack", InputsMatch.Rule).Met);
        Assert.Equal(matches, part.TryClose().Refusal is null);
    }

    [Fact]
    public void A_mate_without_the_value_to_compare_is_named()
    {
        var part = Stacking;
        part.TryFit(Front(), Something.Part("rear", serial: "D-2"), Glue()).Accepted();

        part.EndRule("stack", InputsMatch.Rule).IsNotMet("D-2 has no resonanceHz");
    }

    private static GateCheck Match(MatchRule rule, PartInput front, PartInput rear)
    {
        var part = new APart(
            ARoute.Of(
                ARoute.Stage("stack").Taking("front", partKind: ARoute.ChildKind).Taking("rear", partKind: ARoute.ChildKind) with
                {
                    Match = rule,
                }
            )
        ).Opened("stack");
        var inputs = new Dictionary<string, Input> { ["front"] = front, ["rear"] = rear };
        return Gatekeeper
            .EvaluateEnd(part.Dossier, part.StageOf("stack"), part.Context with { Inputs = inputs })
            .Checks.Single(c => c.Rule == InputsMatch.Rule);
    }

    private static PartInput Film(string position, decimal tensionNm) =>
        Something.Part(position, serial: $"D-{position}", values: [("resonanceHz", 900m), ("tensionNm", tensionNm)]);

    [Theory]
    [InlineData(42, true)]
    [InlineData(44, true)]
    [InlineData(44.1, false)]
    public void Front_and_rear_match_in_further_values_too(double rear, bool matches)
    {
        var check = Match(
            new(["front", "rear"], "resonanceHz", 10) { Further = [new("tensionNm", 2)] },
            Film("front", 42),
            Film("rear", (decimal)rear)
        );
        Assert.Equal(matches, check.Met);
        Assert.Contains(
            matches
                ? "resonanceHz of D-front (900) and D-rear (900) differ by 0"
                : "tensionNm of D-front (42) and D-rear (44.1) differ by 2.1, at most 2 allowed",
            check.Because,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_further_value_that_one_of_them_never_had_does_not_stop_them() =>
        Match(new(["front", "rear"], "resonanceHz", 10) { Further = [new("tensionNm", 2)] }, Film("front", 42), Rear()).IsMet();

    [Fact]
    public void Front_and_rear_of_different_film_lots_match_unless_the_route_wants_one_lot()
    {
        var (front, rear) = (Film("front", 42) with { FilmLotId = Guid.NewGuid() }, Film("rear", 42) with { FilmLotId = Guid.NewGuid() });
        Match(new(["front", "rear"], "resonanceHz", 10), front, rear).IsMet();
        Match(new(["front", "rear"], "resonanceHz", 10) { SameFilmLot = true }, front, rear)
            .IsNotMet("D-front and D-rear are of different film lots");
        Match(new(["front", "rear"], "resonanceHz", 10) { SameFilmLot = true }, front, rear with { FilmLotId = front.FilmLotId }).IsMet();
    }
}
