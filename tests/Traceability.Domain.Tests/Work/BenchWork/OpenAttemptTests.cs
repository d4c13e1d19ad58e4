using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;

namespace Traceability.Domain.Tests.Work.BenchWork;

/// <summary>Beginning, filling and abandoning an attempt.</summary>
public class OpenAttemptTests
{
    private static APart Stacking =>
        new(
            ARoute.Of(
                ARoute
                    .Stage("stack")
                    .Taking("front", partKind: ARoute.ChildKind)
                    .Taking("screws", "screws")
                    .Measuring("torqueNcm", 1, 2) with
                {
                    MinimumOpenMinutes = null,
                }
            )
        );

    [Fact]
    public void Attempts_count_from_one_per_stage()
    {
        var part = new APart(ARoute.Plain).Passed("mount").Opened("tune");
        part.TryAbandon().Accepted();
        part.Opened("tune");

        Assert.Equal([("mount", 1), ("tune", 1), ("tune", 2)], part.Dossier.Attempts.Select(a => (a.Stage, a.Attempt.Number)));
    }

    [Fact]
    public void Abandoning_frees_what_this_attempt_fitted_and_keeps_what_an_earlier_one_did()
    {
        var part = Stacking.Opened("stack").Filled();
        part.TryRead(("torqueNcm", "5")).Accepted();
        part.TryClose().Accepted();
        part.Decided(DispositionKind.Repair).Opened("stack");
        part.TryRemove("front").Accepted();
        part.Filled();

        var freed = part.TryAbandon().Facts.OfType<Removal>().Single();

        Assert.Equal("front", part.Dossier.Of<Fitting>().Single(f => f.Id == freed.FittingId).Position);
        Assert.Equal(["screws"], part.Dossier.PresentFittings.Keys);
        Assert.Equal(PartState.Ready, part.Dossier.State());
    }

    [Fact]
    public void Abandoning_keeps_the_readings_but_they_do_not_count()
    {
        var part = Stacking.Opened("stack");
        part.TryRead(("torqueNcm", "1.5")).Accepted();
        part.TryAbandon("fire alarm").Accepted();

        Assert.Equal(1.5m, part.ReadingOf("torqueNcm").Value);
        Assert.Null(part.Dossier.CountingReading("torqueNcm"));
        part.TryRead(("torqueNcm", "1.6")).IsRefused(RefusalKind.Conflict, "abandoned: fire alarm");
    }

    [Fact]
    public void Abandoning_needs_a_reason() => Stacking.Opened("stack").TryAbandon(" ").IsRefused(RefusalKind.Invalid, "say why");

    [Fact]
    public void The_attempt_on_a_held_part_may_still_be_abandoned()
    {
        var part = Stacking.Opened("stack");
        part.Hold();

        part.TryAbandon().Accepted();
    }

    [Fact]
    public void An_unknown_characteristic_is_refused_with_those_the_stage_has()
    {
        var part = Stacking.Opened("stack");

        part.TryRead(("torqueNm", "1.5")).IsRefused(RefusalKind.Invalid, "no characteristic 'torqueNm'", "torqueNcm");
        new APart(ARoute.Of(ARoute.Capacitance()))
            .Opened("capacitance")
            .TryRead(("asymmetryPct", "1"))
            .IsRefused(RefusalKind.Invalid, "is computed, not entered");
    }

    [Fact]
    public void A_characteristic_is_read_once_and_then_corrected()
    {
        var part = Stacking.Opened("stack");
        part.TryRead(("torqueNcm", "1.50")).Accepted();

        part.TryRead(("torqueNcm", "1.6"))
            .IsRefused(RefusalKind.Conflict, "already read as 1.50", part.ReadingOf("torqueNcm").Reading.Id.ToString());
    }

    [Fact]
    public void Of_several_readings_all_are_taken_or_none()
    {
        var part = Stacking.Opened("stack");

        part.TryRead(("torqueNcm", "1.5"), ("nonsense", "1")).IsRefused(RefusalKind.Invalid);
        part.TryRead(("torqueNcm", "1.5"), ("torqueNcm", "1.5")).IsRefused(RefusalKind.Invalid, "there 2 times");
        Assert.Empty(part.Dossier.OpenAttempt!.Readings);
    }

    [Fact]
    public void An_unknown_position_is_refused_with_those_the_stage_has() =>
        Stacking
            .Opened("stack")
            .TryFit(Something.Lot("middle", "screws"))
            .IsRefused(RefusalKind.Invalid, "no position 'middle'", "front, screws");

    [Fact]
    public void A_filled_position_is_emptied_before_something_else_goes_in()
    {
        var part = Stacking.Opened("stack").Filled();

        part.TryFit(Something.Lot("screws", "screws")).IsRefused(RefusalKind.Conflict, "'screws' of C-1 is filled");
    }

    [Fact]
    public void Of_several_fittings_all_go_in_or_none()
    {
        var part = Stacking.Opened("stack");

        part.TryFit(Something.Part("front"), Something.Lot("screws", "washers")).IsRefused(RefusalKind.Conflict, "Nothing was recorded");
        Assert.Empty(part.Dossier.PresentFittings);
    }

    [Fact]
    public void Nothing_is_fitted_in_a_held_part()
    {
        var part = Stacking.Opened("stack");
        part.Hold();

        part.TryFit(Something.Part("front")).IsRefused(RefusalKind.Conflict, "on hold");
    }
}
