using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;

namespace Traceability.Domain.Tests.Work.QualityDecisions;

/// <summary>What was measured with an instrument in doubt is accepted, held or measured again; for every part, or for none.</summary>
public class InstrumentDoubtDecisionTests
{
    private static readonly Instrument Bench = Something.Instrument("RB", new(2026, 1, 1), new(2027, 1, 1)).Instrument;

    private static APart Doubted(int? allowedAttempts = null, string kind = PartKinds.Capsule) =>
        WithDoubt(
            new APart(
                ARoute.Of(
                    ARoute.Stage("mount"),
                    ARoute.Stage("tune").Measuring("resonanceHz", 880, 920) with
                    {
                        AllowedAttempts = allowedAttempts,
                    },
                    ARoute.Stage("trim")
                ) with
                {
                    Kind = kind,
                }
            ).Passed("mount", "tune", "trim"),
            "trim",
            "tune"
        );

    private static APart WithDoubt(APart part, params string[] stages)
    {
        part.Around = part.Dossier.Around with { InDoubt = [.. stages.Select(s => Doubt(part.Dossier.Part.Id, s))] };
        return part;
    }

    private static InDoubt Doubt(Guid part, string stage, string? instrument = null) =>
        new(part, "D-7", stage, instrument ?? Bench.Code, "measured in doubt");

    private static Decision<IReadOnlyList<DecidedDoubt>> Decide(
        DoubtDecisionKind kind,
        APart part,
        Actor? by = null,
        string reason = "reads 1 Hz high"
    ) =>
        InstrumentDoubts.Decide(
            [part.Dossier],
            Bench,
            kind,
            reason,
            by ?? Somebody.QualityLead,
            part.Bench.Stamp(by ?? Somebody.QualityLead)
        );

    [Fact]
    public void What_is_accepted_is_decided_for_a_reason_and_nothing_else_follows()
    {
        var decided = Assert.Single(Decide(DoubtDecisionKind.Accepted, Doubted(), reason: " reads 1 Hz high ").Accepted());

        Assert.Equal([decided.Decision], decided.Facts);
        Assert.Equal(
            (Bench.Id, DoubtDecisionKind.Accepted, null, "reads 1 Hz high"),
            (decided.Decision.InstrumentId, decided.Decision.Kind, decided.Decision.ReturnTo, decided.Decision.Reason)
        );
        Assert.Equal(["reason"], Decide(DoubtDecisionKind.Accepted, Doubted(), reason: " ").IsRefused(RefusalKind.Invalid).Errors.Keys);
    }

    [Fact]
    public void Who_built_the_part_does_not_accept_what_was_measured_on_it() =>
        Decide(DoubtDecisionKind.Accepted, Doubted(), Somebody.Builder).IsRefused(RefusalKind.Forbidden, Somebody.Builder.Name);

    [Fact]
    public void What_is_held_is_put_on_hold_for_the_reason_unless_it_is_for_that_reason_already()
    {
        var part = Doubted();
        var hold = Assert.IsType<Hold>(Decide(DoubtDecisionKind.Held, part).Accepted()[0].Facts[1]);
        Assert.Equal((part.Dossier.Part.Id, "reads 1 Hz high"), (hold.PartId, hold.Reason));

        part.Hold("another reason");
        Assert.Equal(2, Decide(DoubtDecisionKind.Held, part).Accepted()[0].Facts.Count);
        part.Hold("reads 1 Hz high");
        Assert.Single(Decide(DoubtDecisionKind.Held, part).Accepted()[0].Facts);
    }

    [Fact]
    public void A_film_lot_is_held_as_a_lot() =>
        Decide(DoubtDecisionKind.Held, Doubted(kind: PartKinds.FilmLot)).IsRefused(RefusalKind.Conflict, "C-1");

    [Fact]
    public void What_is_measured_again_goes_back_to_the_first_stage_in_doubt_on_its_route() =>
        Assert.Equal("tune", Decide(DoubtDecisionKind.Remeasure, Doubted()).Accepted()[0].Decision.ReturnTo);

    [Fact]
    public void What_cannot_be_measured_now_is_not_sent_back()
    {
        Decide(DoubtDecisionKind.Remeasure, Doubted().Shipped()).IsRefused(RefusalKind.Conflict, Words.Of(PartState.Shipped));
        Decide(DoubtDecisionKind.Remeasure, Doubted().FittedIn("U-1")).IsRefused(RefusalKind.Conflict, "U-1");
        Decide(DoubtDecisionKind.Accepted, Doubted().FittedIn("U-1")).Accepted();

        var open = Doubted();
        open.TryRaise().Accepted();
        WithDoubt(open.Decided(DispositionKind.Rework, "trim").Opened("trim"), "tune");
        Decide(DoubtDecisionKind.Remeasure, open).IsRefused(RefusalKind.Conflict, "ST-1");
    }

    [Fact]
    public void A_part_that_has_no_attempt_left_at_a_stage_on_the_way_is_not_sent_back()
    {
        var spent = new APart(
            ARoute.Of(ARoute.Stage("mount"), ARoute.Stage("tune").Measuring("resonanceHz", 880, 920) with { AllowedAttempts = 1 })
        )
            .Passed("mount")
            .Failed("tune")
            .Decided(DispositionKind.Concession);

        Decide(DoubtDecisionKind.Remeasure, WithDoubt(spent, "tune")).IsRefused(RefusalKind.Conflict, "Tune");
        Decide(DoubtDecisionKind.Remeasure, Doubted(allowedAttempts: 1)).Accepted();
    }

    [Fact]
    public void A_stage_spent_before_the_one_in_doubt_does_not_stand_in_the_way()
    {
        var part = new APart(
            ARoute.Of(ARoute.Stage("tune").Measuring("resonanceHz", 880, 920) with { AllowedAttempts = 1 }, ARoute.Stage("trim"))
        )
            .Failed("tune")
            .Decided(DispositionKind.Concession)
            .Passed("trim");

        Decide(DoubtDecisionKind.Remeasure, WithDoubt(part, "trim")).Accepted();
    }

    [Fact]
    public void Nothing_is_decided_on_a_part_that_is_scrapped_or_has_nothing_in_doubt_by_this_instrument()
    {
        var scrapped = Doubted();
        scrapped.TryRaise().Accepted();
        Decide(DoubtDecisionKind.Accepted, scrapped.Decided(DispositionKind.Scrap)).IsRefused(RefusalKind.Conflict, "scrapped");

        var clean = new APart(ARoute.Plain);
        Decide(DoubtDecisionKind.Accepted, clean).IsRefused(RefusalKind.Conflict, Bench.Code);
        clean.Around = clean.Dossier.Around with { InDoubt = [Doubt(clean.Dossier.Part.Id, "mount", "RB-9")] };
        Decide(DoubtDecisionKind.Accepted, clean).IsRefused(RefusalKind.Conflict, Bench.Code);
    }

    [Fact]
    public void What_was_measured_on_something_inside_is_decided_on_there()
    {
        var around = new APart(ARoute.Plain);
        around.Around = around.Dossier.Around with
        {
            InDoubt =
            [
                Doubt(Guid.NewGuid(), "tune"),
                Doubt(Guid.NewGuid(), "trim"),
                Doubt(Guid.NewGuid(), "trim", "RB-9") with
                {
                    Serial = "D-9",
                },
            ],
        };

        var refusal = Decide(DoubtDecisionKind.Accepted, around).IsRefused(RefusalKind.Conflict, "D-7");
        Assert.DoesNotContain("D-9", refusal.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("D-7, D-7", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void One_part_refused_refuses_all_and_is_the_one_named()
    {
        var (good, bad) = (Doubted(), new APart(ARoute.Plain));

        var refusal = InstrumentDoubts
            .Decide(
                [good.Dossier, bad.Dossier],
                Bench,
                DoubtDecisionKind.Accepted,
                "it is well",
                Somebody.QualityLead,
                good.Bench.Stamp(Somebody.QualityLead)
            )
            .IsRefused(RefusalKind.Conflict, "C-1:");

        Assert.Single(refusal.Errors);
    }
}
