using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;

namespace Traceability.Domain.Tests.Gates;

public class DossierTests
{
    private static readonly APart TwiceMeasured = new APart(
        ARoute.Of(ARoute.Stage("mount").Measuring("heightUm", 10, 20), ARoute.Stage("tune").Measuring("heightUm", 10, 20))
    );

    private static APart Twice()
    {
        var part = new APart(TwiceMeasured.Dossier.Route);
        foreach (var (stage, height) in new[] { ("mount", "12"), ("tune", "17") })
        {
            part.Opened(stage).TryRead(("heightUm", height)).Accepted();
            part.TryClose().Accepted();
        }

        return part;
    }

    [Fact]
    public void A_dossier_as_of_a_moment_holds_what_was_recorded_in_that_very_moment()
    {
        var part = Twice();
        var ending = part.Dossier.Of<AttemptEnding>().First();

        Assert.Contains(ending, part.Dossier.AsOf(ending.RecordedAt).Facts);
        Assert.DoesNotContain(ending, part.Dossier.AsOf(ending.RecordedAt.AddTicks(-1)).Facts);
        Assert.Contains(ending, part.Dossier.CorrectedAsOf(ending.RecordedAt).Facts);
        Assert.DoesNotContain(ending, part.Dossier.CorrectedAsOf(ending.RecordedAt.AddTicks(-1)).Facts);
    }

    [Fact]
    public void A_dossier_corrected_as_of_a_moment_holds_corrections_made_since_and_nothing_else()
    {
        var part = Twice();
        var moment = part.Dossier.Of<AttemptEnding>().First().RecordedAt;
        part.TryCorrect("heightUm", "18").Accepted();

        Assert.Equal(
            [typeof(Correction)],
            part.Dossier.CorrectedAsOf(moment).Facts.Where(f => f.RecordedAt > moment).Select(f => f.GetType())
        );
    }

    [Fact]
    public void Of_a_characteristic_measured_at_two_stages_the_later_stage_counts() =>
        Assert.Equal(17, Twice().Dossier.CountingReading("heightUm")!.Value);

    [Fact]
    public void The_wish_that_a_stage_be_measured_again_undoes_its_pass_and_the_later_ones()
    {
        var part = Twice();
        part.Add(DoubtDecided(part, DoubtDecisionKind.Remeasure, "tune"));
        Assert.Equal(["mount"], part.Passes);

        part.Add(DoubtDecided(part, DoubtDecisionKind.Remeasure, "mount"));
        Assert.Empty(part.Passes);
    }

    [Fact]
    public void A_doubt_that_was_accepted_undoes_nothing()
    {
        var part = Twice();
        part.Add(DoubtDecided(part, DoubtDecisionKind.Accepted, null));

        Assert.Equal(["mount", "tune"], part.Passes);
    }

    [Fact]
    public void A_return_that_the_part_does_not_have_is_none() => Assert.Null(BackAgain.Of(Twice().Dossier, Guid.NewGuid()));

    private static DoubtDecision DoubtDecided(APart part, DoubtDecisionKind kind, string? returnTo)
    {
        var stamp = part.Bench.Stamp(Somebody.QualityLead);
        return new(
            stamp.NewId(),
            part.Dossier.Part.Id,
            Guid.NewGuid(),
            kind,
            returnTo,
            "reads high",
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
    }
}
