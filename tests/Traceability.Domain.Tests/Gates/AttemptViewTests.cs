using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Values.Limits;

namespace Traceability.Domain.Tests.Gates;

public class AttemptViewTests
{
    private static APart Measuring => new APart(ARoute.Of(ARoute.Stage("measure").Measuring("heightUm", 10, 20))).Opened("measure");

    private static AttemptView Last(APart part) => part.Dossier.Attempts[^1];

    [Fact]
    public void An_attempt_that_is_open_or_was_abandoned_has_no_verdict()
    {
        var part = Measuring;
        Assert.Null(Last(part).Verdict);

        part.TryAbandon().Accepted();
        Assert.Null(Last(part).Verdict);
    }

    [Fact]
    public void Who_only_attached_a_file_had_a_hand_in_the_attempt()
    {
        var part = new APart(ARoute.Of(ARoute.Stage("soak") with { Evidence = [new("log", "climate-log", true)] })).Opened("soak");
        part.Worker = Somebody.OtherBuilder;
        part.TryAttach("log", "climate-log", "time,temperature_c,humidity_pct\n2026-03-02T08:00:00Z,23,45\n2026-03-02T08:01:00Z,23,45\n")
            .Accepted();

        Assert.True(Last(part).WorkedOnBy(Somebody.OtherBuilder.PersonId));
        Assert.False(Last(part).WorkedOnBy(Somebody.QualityLead.PersonId));
    }

    [Fact]
    public void Only_who_put_another_value_in_the_place_of_an_entered_one_corrected_the_attempt()
    {
        var part = Measuring;
        part.TryRead(("heightUm", "15")).Accepted();
        Assert.False(Last(part).CorrectedBy(Somebody.QualityLead.PersonId));

        part.TryCorrect("heightUm", "16", Somebody.QualityLead).Accepted();

        Assert.True(Last(part).CorrectedBy(Somebody.QualityLead.PersonId));
        Assert.False(Last(part).CorrectedBy(Somebody.OtherBuilder.PersonId));
    }

    [Fact]
    public void What_was_computed_anew_after_a_correction_was_corrected_by_nobody()
    {
        var part = Measuring;
        part.TryRead(("heightUm", "15")).Accepted();
        part.TryCorrect("heightUm", "16", Somebody.QualityLead).Accepted();
        var view = Last(part);
        var computed = view with
        {
            Readings = [.. view.Readings.Select(r => r with { Reading = r.Reading with { Source = ReadingSource.Computed } })],
        };

        Assert.False(computed.CorrectedBy(Somebody.QualityLead.PersonId));
    }

    [Theory]
    [InlineData(-1, true)]
    [InlineData(0, true)]
    [InlineData(1, false)]
    public void A_log_of_the_load_is_evidence_of_a_part_up_to_the_moment_in_which_it_ended(int ticks, bool isEvidence)
    {
        var part = Measuring;
        part.TryRead(("heightUm", "15")).Accepted();
        part.TryClose().Accepted();
        var (attempt, ending) = (Last(part).Attempt with { LoadId = Guid.NewGuid() }, Last(part).Ending!);
        var sentAt = ending.RecordedAt.AddTicks(ticks);
        var log = new EvidenceRecord(
            Guid.NewGuid(),
            null,
            null,
            attempt.LoadId,
            "log",
            "climate-log",
            "text/csv",
            "",
            1,
            null,
            Guid.Empty,
            sentAt,
            sentAt
        );

        Assert.Equal(isEvidence, Assert.Single(AttemptView.AllOf([attempt, ending, log])).Evidence.Count == 1);
    }

    [Fact]
    public void A_value_that_is_met_conforms_and_one_outside_does_not()
    {
        var part = Measuring;
        part.TryRead(("heightUm", "15")).Accepted();
        Assert.Equal(Conformity.Met, part.ReadingOf("heightUm").Conformity);

        part.TryCorrect("heightUm", "21").Accepted();
        Assert.Equal(Conformity.NotMet, part.ReadingOf("heightUm").Conformity);
    }
}
