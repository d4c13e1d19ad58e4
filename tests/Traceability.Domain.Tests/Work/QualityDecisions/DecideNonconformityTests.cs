using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;

namespace Traceability.Domain.Tests.Work.QualityDecisions;

public class DecideNonconformityTests
{
    private static APart FailedTune
    {
        get
        {
            var part = new APart(
                ARoute.Of(
                    ARoute.Stage("mount").Taking("film", "film").Measuring("torqueNcm", 1, 2),
                    ARoute.Stage("tune").Measuring("resonanceHz", 880, 920),
                    ARoute.Stage("trim")
                )
            );
            part.Passed("mount").Failed("tune");
            return part;
        }
    }

    [Fact]
    public void A_failed_stage_stops_the_part_until_something_is_decided()
    {
        var part = FailedTune;

        Assert.Equal(PartState.Nonconforming, part.Dossier.State());
        Assert.Equal((NonconformityCodes.StageFailed, "tune"), (part.OpenNonconformity.Code, part.OpenNonconformity.Stage));
        part.TryOpen("tune").IsRefused(RefusalKind.Conflict, "open nonconformity");
    }

    [Theory]
    [InlineData(DispositionKind.Concession)]
    [InlineData(DispositionKind.Regrade)]
    public void A_concession_and_a_regrade_let_the_failed_stage_count_as_passed(DispositionKind kind)
    {
        var part = FailedTune.Decided(kind);

        Assert.Equal(["mount", "tune"], part.Passes);
        Assert.False(part.Dossier.CountingPass("tune")!.Passed);
        Assert.True(part.Passed("trim").Dossier.IsFinished());
    }

    [Fact]
    public void A_value_that_a_concession_let_pass_counts_for_later_stages() =>
        Assert.Equal(921m, FailedTune.Decided(DispositionKind.Concession).Dossier.CountingReading("resonanceHz")!.Value);

    [Fact]
    public void A_concession_on_something_seen_by_eye_makes_no_stage_pass()
    {
        var part = new APart(ARoute.Plain).Passed("mount").Opened("tune");
        part.TryRaise().Accepted();
        part.TryAbandon().Accepted();

        Assert.Equal(["mount"], part.Decided(DispositionKind.Concession).Passes);
    }

    [Fact]
    public void A_scrapped_part_stays_scrapped_and_leaves_its_carrier()
    {
        var part = FailedTune;
        part.Around = PartPlacement.None with { CarrierCode = "JIG-4" };

        var decision = part.TryDecide(DispositionKind.Scrap);

        Assert.Equal("JIG-4", decision.Facts.OfType<CarrierRelease>().Single().CarrierCode);
        Assert.Equal(PartState.Scrapped, part.Dossier.State());
        part.TryOpen("tune").IsRefused(RefusalKind.Conflict, "scrapped");
        part.TryRaise().IsRefused(RefusalKind.Conflict, "scrapped already");
    }

    [Fact]
    public void Whoever_had_a_hand_in_the_part_may_not_decide_a_concession_on_it()
    {
        var part = FailedTune;
        part.TryDecide(DispositionKind.Concession, by: Somebody.Builder).IsRefused(RefusalKind.Forbidden, "the builder built C-1");
        part.TryDecide(DispositionKind.Concession, by: Somebody.QualityLead).Accepted();
    }

    [Fact]
    public void Who_only_fitted_something_or_took_a_reading_built_it_too()
    {
        var part = new APart(FailedTune.Dossier.Route).Opened("mount");
        part.Worker = Somebody.BuildingQualityLead;
        part.Filled();
        part.Worker = Somebody.OtherBuilder;
        part.TryRead(("torqueNcm", "3")).Accepted();
        part.Worker = Somebody.Builder;
        part.TryClose().Accepted();

        part.TryDecide(DispositionKind.Concession, by: Somebody.BuildingQualityLead).IsRefused(RefusalKind.Forbidden);
        part.TryDecide(DispositionKind.Concession, by: Somebody.OtherBuilder).IsRefused(RefusalKind.Forbidden);
    }

    [Fact]
    public void Who_built_may_decide_anything_but_a_concession() =>
        FailedTune.TryDecide(DispositionKind.Scrap, by: Somebody.Builder).Accepted();

    [Fact]
    public void A_nonconformity_is_decided_once()
    {
        var part = FailedTune;
        var about = part.OpenNonconformity;
        part.Decided(DispositionKind.Concession);

        part.TryDecide(DispositionKind.Scrap, about: about).IsRefused(RefusalKind.Conflict, "decided already");
    }

    [Fact]
    public void Nothing_is_decided_while_an_attempt_is_open()
    {
        var part = new APart(ARoute.Plain).Opened("mount");
        part.TryRaise().Accepted();

        part.TryDecide(DispositionKind.Scrap).IsRefused(RefusalKind.Conflict, "open on C-1 at ST-1");
        part.TryAbandon().Accepted();
        part.TryDecide(DispositionKind.Scrap).Accepted();
    }

    [Fact]
    public void A_decision_needs_a_reason_and_returns_to_a_stage_only_where_that_makes_sense()
    {
        FailedTune.TryDecide(DispositionKind.Rework, reason: " ").IsRefused(RefusalKind.Invalid, "say why");
        FailedTune.TryDecide(DispositionKind.Concession, "tune").IsRefused(RefusalKind.Invalid, "only rework and repair");
    }

    [Fact]
    public void A_nonconformity_of_another_part_is_not_found()
    {
        var other = FailedTune.OpenNonconformity with { Id = Guid.Empty };

        FailedTune.TryDecide(DispositionKind.Scrap, about: other).IsRefused(RefusalKind.NotFound);
    }

    [Theory]
    [InlineData(DispositionKind.Rework)]
    [InlineData(DispositionKind.Repair)]
    [InlineData(DispositionKind.Scrap)]
    public void A_part_inside_another_is_taken_out_before_it_is_reworked_or_scrapped(DispositionKind kind)
    {
        var part = FailedTune.FittedIn("U-1");

        part.TryDecide(kind).IsRefused(RefusalKind.Conflict, "C-1 is fitted in U-1", "take it out");
        part.FittedIn(null).TryDecide(kind).Accepted();
    }

    [Fact]
    public void A_part_inside_another_may_stay_there_by_concession() =>
        FailedTune.FittedIn("U-1").TryDecide(DispositionKind.Concession).Accepted();

    [Theory]
    [InlineData("Scratched", "a scratch", "a code is small letters")]
    [InlineData("", "a scratch", "a code is small letters")]
    [InlineData("scratched\n", "a scratch", "a code is small letters")]
    [InlineData("scratched", "  ", "say what was seen")]
    public void A_nonconformity_needs_a_plain_code_and_words(string code, string description, string words) =>
        new APart(ARoute.Plain).TryRaise(code, description).IsRefused(RefusalKind.Invalid, words);

    [Fact]
    public void A_code_may_have_forty_characters_and_no_more()
    {
        new APart(ARoute.Plain).TryRaise(new string('a', 40)).Accepted();
        new APart(ARoute.Plain).TryRaise(new string('a', 41)).IsRefused(RefusalKind.Invalid);
    }
}
