using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;

namespace Traceability.Domain.Tests.Work.BenchWork;

public class CorrectReadingTests
{
    private static APart Tuning => new(ARoute.Of(ARoute.Stage("tune").Measuring("resonanceHz", 880, 920), ARoute.Stage("trim")));

    private static APart Measured(string front, string rear)
    {
        var part = new APart(ARoute.Of(ARoute.Capacitance(), ARoute.Stage("trim"))).Opened("capacitance");
        part.TryRead(("capacitanceFrontPf", front), ("capacitanceRearPf", rear)).Accepted();
        part.TryClose().Accepted();
        return part;
    }

    [Fact]
    public void Both_the_wrong_and_the_right_value_stay_visible()
    {
        var part = Tuning.Passed("tune");

        part.TryCorrect("resonanceHz", "881.50").Accepted();

        var reading = part.ReadingOf("resonanceHz");
        Assert.Equal((880m, 881.5m, "881.50"), (reading.Reading.Value, reading.Value, reading.Digits));
        Assert.Equal(("misread", Somebody.Builder.PersonId), (reading.Corrections[0].Reason, reading.Corrections[0].By));
    }

    [Theory]
    [InlineData("880", true)]
    [InlineData("879.9", false)]
    [InlineData("920", true)]
    [InlineData("920.1", false)]
    public void A_corrected_value_is_judged_by_the_limits_that_judged_the_first(string digits, bool met)
    {
        var part = Tuning.Passed("tune");

        Assert.Equal(met, part.TryCorrect("resonanceHz", digits).Accepted().Correction.Met);
        Assert.Equal(met, part.Dossier.IsPassed("tune"));
    }

    [Fact]
    public void A_correction_that_turns_a_pass_raises_a_nonconformity_by_itself()
    {
        var part = Tuning.Passed("tune");

        var corrected = part.TryCorrect("resonanceHz", "870").Accepted();

        Assert.Equal((Verdict.Pass, Verdict.Fail), (corrected.VerdictBefore, corrected.VerdictAfter));
        Assert.Equal(NonconformityCodes.CorrectionTurnedVerdict, corrected.Nonconformity!.Code);
        Assert.Contains("corrected from 880 to 870 Hz", corrected.Nonconformity.Description, StringComparison.Ordinal);
        part.TryOpen("trim").IsRefused(RefusalKind.Conflict, "turned a pass into a fail");
    }

    [Fact]
    public void A_correction_that_turns_a_fail_answers_its_nonconformity()
    {
        var part = Tuning.Failed("tune");

        var corrected = part.TryCorrect("resonanceHz", "900").Accepted();

        Assert.Equal((Verdict.Fail, Verdict.Pass), (corrected.VerdictBefore, corrected.VerdictAfter));
        Assert.Null(corrected.Nonconformity);
        Assert.Empty(part.Dossier.OpenNonconformities());
        part.TryOpen("trim").Accepted();
    }

    [Fact]
    public void A_correction_taken_back_by_another_answers_the_nonconformity_of_the_first()
    {
        var part = Tuning.Passed("tune");
        part.TryCorrect("resonanceHz", "870").Accepted();

        part.TryCorrect("resonanceHz", "890", reason: "it was right but for a digit").Accepted();

        Assert.Empty(part.Dossier.OpenNonconformities());
        part.TryOpen("trim").Accepted();
    }

    [Fact]
    public void A_correction_that_turns_nothing_raises_nothing()
    {
        Assert.Null(Tuning.Passed("tune").TryCorrect("resonanceHz", "910").Accepted().Nonconformity);
        Assert.Null(Tuning.Failed("tune").TryCorrect("resonanceHz", "930").Accepted().Nonconformity);
    }

    [Fact]
    public void A_correction_in_an_attempt_still_open_judges_nothing_yet()
    {
        var part = Tuning.Opened("tune");
        part.TryRead(("resonanceHz", "90")).Accepted();

        Assert.Null(part.TryCorrect("resonanceHz", "900").Accepted().VerdictAfter);
        Assert.Equal(Verdict.Pass, part.TryClose().Accepted().Verdict);
    }

    [Fact]
    public void What_was_computed_from_a_corrected_reading_is_computed_anew()
    {
        var part = Measured("50.0", "50.0");
        Assert.Equal(0m, part.ReadingOf("asymmetryPct").Value);

        part.TryCorrect("capacitanceRearPf", "51.0").Accepted();

        Assert.Equal("1.98", part.ReadingOf("asymmetryPct").Digits);
        Assert.Equal("0.00", part.ReadingOf("asymmetryPct").Reading.Digits);
    }

    [Fact]
    public void A_value_computed_anew_can_turn_the_verdict_either_way()
    {
        Assert.Equal(Verdict.Fail, Measured("50", "50").TryCorrect("capacitanceRearPf", "60").Accepted().VerdictAfter);
        Assert.Equal(Verdict.Pass, Measured("50", "60").TryCorrect("capacitanceRearPf", "50").Accepted().VerdictAfter);
    }

    [Fact]
    public void A_correction_from_which_nothing_can_be_computed_is_refused() =>
        Measured("50", "50").TryCorrect("capacitanceRearPf", "-50").IsRefused(RefusalKind.Conflict, "cannot be", "Nothing was corrected");

    [Fact]
    public void A_computed_value_is_not_corrected_itself() =>
        Measured("50", "50").TryCorrect("asymmetryPct", "1").IsRefused(RefusalKind.Conflict, "is computed");

    [Fact]
    public void A_builder_may_correct_only_before_the_next_stage_was_started()
    {
        var part = Tuning.Passed("tune");
        part.TryCorrect("resonanceHz", "890").Accepted();
        part.Opened("trim");

        part.TryCorrect("resonanceHz", "891").IsRefused(RefusalKind.Forbidden, "only the quality lead");
        part.TryCorrect("resonanceHz", "891", Somebody.QualityLead).Accepted();
    }

    [Fact]
    public void Once_a_part_is_fitted_or_shipped_only_the_quality_lead_corrects()
    {
        Tuning.Passed("tune").FittedIn("U-1").TryCorrect("resonanceHz", "891").IsRefused(RefusalKind.Forbidden);
        Tuning.Passed("tune").Shipped().TryCorrect("resonanceHz", "891").IsRefused(RefusalKind.Forbidden);
        Tuning.Passed("tune").Shipped().TryCorrect("resonanceHz", "891", Somebody.QualityLead).Accepted();
    }

    [Fact]
    public void The_service_desk_corrects_no_reading() =>
        Tuning.Passed("tune").TryCorrect("resonanceHz", "891", Somebody.ServiceDesk).IsRefused(RefusalKind.Forbidden);

    [Fact]
    public void A_correction_needs_a_reason() =>
        Tuning.Passed("tune").TryCorrect("resonanceHz", "891", reason: "").IsRefused(RefusalKind.Invalid, "say why");

    [Fact]
    public void Readings_of_an_abandoned_attempt_are_left_as_they_are()
    {
        var part = Tuning.Opened("tune");
        part.TryRead(("resonanceHz", "900")).Accepted();
        part.TryAbandon().Accepted();

        part.TryCorrect("resonanceHz", "901").IsRefused(RefusalKind.Conflict, "abandoned");
    }

    [Fact]
    public void A_reading_of_another_part_is_not_found()
    {
        var (mine, other) = (Tuning.Passed("tune"), Measured("50", "50"));
        var unknown = other.ReadingOf("asymmetryPct").Reading.Id;

        var decision = Readings.Correct(
            mine.Dossier,
            unknown,
            Numbers.Typed("1"),
            "misread",
            mine.Context with
            {
                Actor = Somebody.QualityLead,
            },
            _ => new([], mine.Context),
            mine.Bench.Stamp(Somebody.QualityLead)
        );

        decision.IsRefused(RefusalKind.NotFound, "C-1 has no reading");
    }

    [Fact]
    public void A_reading_is_judged_anew_on_what_was_known_when_its_attempt_ended()
    {
        var ring = new Stage("ring", "Ring", "ring-drift")
        {
            Parameters = new()
            {
                Numbers = new Dictionary<string, decimal>
                {
                    ["jigRadiusMm"] = 12.5m,
                    ["ringRadiusMm"] = 12,
                    ["baseThicknessUm"] = 6,
                    ["metalThicknessNm"] = 50,
                },
            },
        };
        ring = ring.Measuring("ringResonanceHz", null, null)
            .Measuring("ringTemperatureC", null, null)
            .Measuring("ringHumidityPct", null, null)
            .Measuring("ringPressureHpa", null, null)
            .Computing("ringTensionNm", "N/m")
            .Computing("driftPct", "pct");
        ring = ring with
        {
            Characteristics = [.. ring.Characteristics.Select(c => c.Name == "driftPct" ? c with { Lower = -3, Upper = 2 } : c)],
        };
        var tune = ARoute
            .Stage("tune")
            .Measuring("jigResonanceHz", 1200, null)
            .Measuring("tuneTemperatureC", 22, null)
            .Measuring("tuneHumidityPct", 45, null)
            .Measuring("tunePressureHpa", 1000, null);
        var part = new APart(ARoute.Of(tune, ring)).Passed("tune").Opened("ring");
        part.TryRead(("ringResonanceHz", "1166"), ("ringTemperatureC", "22"), ("ringHumidityPct", "45"), ("ringPressureHpa", "1000"))
            .Accepted();
        Assert.Equal(Verdict.Fail, part.TryClose().Accepted().Verdict);
        part.Decided(DispositionKind.Rework, "tune");
        Assert.Null(part.Dossier.CountingReading("jigResonanceHz"));

        var corrected = part.TryCorrect("ringResonanceHz", "1266", Somebody.QualityLead).Accepted();

        Assert.Equal(Verdict.Pass, corrected.VerdictAfter);
        Assert.InRange(part.ReadingOf("driftPct").Value, -0.5m, 0.5m);
    }
}
