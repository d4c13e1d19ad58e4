using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;

namespace Traceability.Domain.Tests.Work.BenchWork;

/// <summary>A corrected reading reaches everything that was computed from it later.</summary>
public class JudgeAnewTests
{
    private static readonly Dictionary<string, decimal> FilmAndRadii = new()
    {
        ["jigRadiusMm"] = 12.5m,
        ["ringRadiusMm"] = 12,
        ["baseThicknessUm"] = 6,
        ["metalThicknessNm"] = 50,
    };

    private static Stage Tune =>
        ARoute
            .Stage("tune")
            .Measuring("jigResonanceHz", 1100, null)
            .Measuring("tuneTemperatureC", null, null)
            .Measuring("tuneHumidityPct", null, null)
            .Measuring("tunePressureHpa", null, null);

    private static Stage Ring
    {
        get
        {
            var ring = new Stage("ring", "Ring", "ring-drift") { Parameters = new() { Numbers = FilmAndRadii } }
                .Measuring("ringResonanceHz", null, null)
                .Measuring("ringTemperatureC", null, null)
                .Measuring("ringHumidityPct", null, null)
                .Measuring("ringPressureHpa", null, null)
                .Computing("ringTensionNm", "N/m")
                .Computing("expectedRingHz", "Hz")
                .Computing("driftPct", "pct");
            return ring with
            {
                Characteristics = [.. ring.Characteristics.Select(c => c.Name == "driftPct" ? c with { Lower = -3, Upper = 2 } : c)],
            };
        }
    }

    private static Stage Capacitance =>
        new Stage("capacitance", "Capacitance", "capacitance")
        {
            Parameters = new()
            {
                Numbers = new Dictionary<string, decimal>
                {
                    ["ringRadiusMm"] = 12,
                    ["effectiveAreaPct"] = 80,
                    ["strayCapacitancePf"] = 3,
                    ["polarisingVoltageV"] = 60,
                },
            },
        }
            .Measuring("capacitancePf", null, null)
            .Computing("pullInV", "V");

    private static APart Tuned(string jigHz = "1200") => Tuned(new APart(ARoute.Of(Tune, Ring, ARoute.Stage("trim"))), jigHz);

    private static APart Tuned(APart part, string jigHz)
    {
        part.Opened("tune")
            .TryRead(("jigResonanceHz", jigHz), ("tuneTemperatureC", "22"), ("tuneHumidityPct", "45"), ("tunePressureHpa", "1000"))
            .Accepted();
        part.TryClose().Accepted();
        return part;
    }

    private static APart OnRing(APart part, string ringHz = "1266")
    {
        part.Opened("ring")
            .TryRead(("ringResonanceHz", ringHz), ("ringTemperatureC", "22"), ("ringHumidityPct", "45"), ("ringPressureHpa", "1000"))
            .Accepted();
        part.TryClose().Accepted();
        return part;
    }

    [Fact]
    public void A_corrected_jig_resonance_supersedes_the_drift_that_was_computed_from_it_later()
    {
        var part = OnRing(Tuned());
        var before = part.ReadingOf("driftPct").Value;

        var corrected = part.TryCorrect("jigResonanceHz", "1210", Somebody.QualityLead).Accepted();

        var drift = part.ReadingOf("driftPct");
        Assert.Equal(before, drift.Reading.Value);
        Assert.True(drift.Value < before - 0.5m, $"{drift.Value} after {before}");
        Assert.Equal(drift.Value, OnRing(Tuned("1210")).ReadingOf("driftPct").Value);
        Assert.Equal("ring", Assert.Single(corrected.Later).Attempt.Stage);
        Assert.Contains(
            "jigResonanceHz of C-1 was corrected from 1200 to 1210 Hz",
            drift.Corrections.Single().Reason,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("tuneTemperatureC", "26")]
    [InlineData("tuneHumidityPct", "60")]
    [InlineData("tunePressureHpa", "960")]
    public void A_corrected_reading_of_the_air_reaches_it_too(string air, string digits)
    {
        var part = OnRing(Tuned());

        Assert.Single(part.TryCorrect(air, digits, Somebody.QualityLead).Accepted().Later);

        Assert.NotEmpty(part.ReadingOf("driftPct").Corrections);
    }

    [Fact]
    public void A_later_verdict_that_turns_raises_a_nonconformity_of_its_own_and_stops_the_part()
    {
        var part = OnRing(Tuned());

        var corrected = part.TryCorrect("jigResonanceHz", "1300", Somebody.QualityLead).Accepted();

        Assert.Equal((Verdict.Pass, Verdict.Pass, null), (corrected.VerdictBefore, corrected.VerdictAfter, corrected.Nonconformity));
        var later = Assert.Single(corrected.Later);
        Assert.Equal((Verdict.Pass, Verdict.Fail), (later.Before, later.After));
        Assert.Equal((NonconformityCodes.CorrectionTurnedVerdict, "ring"), (later.Nonconformity!.Code, later.Nonconformity.Stage));
        Assert.Contains("driftPct", later.Nonconformity.Description, StringComparison.Ordinal);
        part.TryOpen("trim").IsRefused(RefusalKind.Conflict, "turned a pass into a fail");
    }

    [Fact]
    public void A_correction_taken_back_answers_the_nonconformity_of_the_later_stage()
    {
        var part = OnRing(Tuned());
        part.TryCorrect("jigResonanceHz", "1300", Somebody.QualityLead).Accepted();

        part.TryCorrect("jigResonanceHz", "1200", Somebody.QualityLead, "it was right").Accepted();

        Assert.Equal(part.ReadingOf("driftPct").Reading.Digits, part.ReadingOf("driftPct").Digits);
        Assert.Empty(part.Dossier.OpenNonconformities());
        part.TryOpen("trim").Accepted();
    }

    [Fact]
    public void A_later_stage_that_failed_by_the_wrong_value_passes_by_the_right_one()
    {
        var part = OnRing(Tuned("1300"));
        Assert.Equal(Verdict.Fail, part.Dossier.Attempts[^1].Verdict);

        part.TryCorrect("jigResonanceHz", "1200", Somebody.QualityLead).Accepted();

        Assert.True(part.Dossier.IsPassed("ring"));
        Assert.Empty(part.Dossier.OpenNonconformities());
    }

    [Fact]
    public void A_first_attempt_that_fails_by_its_correction_still_gives_its_right_value_to_what_was_computed_from_it()
    {
        var part = OnRing(Tuned("1110"), "1172");

        var corrected = part.TryCorrect("jigResonanceHz", "1090", Somebody.QualityLead).Accepted();

        Assert.Equal(Verdict.Fail, corrected.VerdictAfter);
        Assert.Single(Assert.Single(corrected.Later).Values, v => v.ReadingId == part.ReadingOf("driftPct").Reading.Id);
    }

    [Fact]
    public void An_attempt_that_used_another_tuning_is_left_alone()
    {
        var part = Tuned();
        var first = part.ReadingOf("jigResonanceHz").Reading.Id;
        part.TryRaise().Accepted();
        part.Decided(DispositionKind.Rework, "tune");
        OnRing(Tuned(part, "1200"));

        var corrected = Readings
            .Correct(
                part.Dossier,
                first,
                Numbers.Typed("1300"),
                "misread",
                part.Context with
                {
                    Actor = Somebody.QualityLead,
                },
                _ => new([], part.Context),
                part.Bench.Stamp(Somebody.QualityLead)
            )
            .Accepted();

        Assert.Empty(corrected.Later);
    }

    [Fact]
    public void A_stage_closed_before_the_corrected_one_is_left_alone()
    {
        var part = OnRing(Tuned());

        Assert.Empty(part.TryCorrect("ringResonanceHz", "1260", Somebody.QualityLead).Accepted().Later);
    }

    [Fact]
    public void A_correction_reaches_the_capsule_that_the_diaphragm_is_fitted_in()
    {
        var (capsule, judged) = CorrectedInside("1240");

        Assert.Equal("capacitance", Assert.Single(judged).Attempt.Stage);
        var pullIn = capsule.ReadingOf("pullInV");
        Assert.Equal((double)pullIn.Reading.Value * 1240 / 1266, (double)pullIn.Value, 0.1);
        Assert.Empty(capsule.Dossier.OpenNonconformities());
    }

    [Fact]
    public void A_finding_that_fails_only_by_the_corrected_value_stops_the_part_although_every_reading_is_met()
    {
        var (capsule, judged) = CorrectedInside("500");

        Assert.Equal(NonconformityCodes.FindingAfterCorrection, Assert.Single(judged).Nonconformity!.Code);
        Assert.Contains(
            "would fall onto the electrode",
            Assert.Single(capsule.Dossier.OpenNonconformities()).Description,
            StringComparison.Ordinal
        );
    }

    private static (APart Capsule, IReadOnlyList<JudgedAnew> Judged) CorrectedInside(string ringHz)
    {
        var diaphragm = OnRing(Tuned());
        var capsule = new APart(ARoute.Of(Capacitance), diaphragm.Bench).Opened("capacitance");
        capsule.TryRead(("capacitancePf", "66")).Accepted();
        capsule.Add(FittingOf(diaphragm, capsule));
        var ended = Attempts.Close(
            capsule.Dossier,
            capsule.Dossier.OpenAttempt!.Id,
            [],
            null,
            capsule.Context with
            {
                Inside = Inside(diaphragm.Dossier, DateTimeOffset.MaxValue),
            },
            capsule.Bench.Stamp(Somebody.Builder)
        );
        Assert.Equal(Verdict.Pass, ended.Accepted().Verdict);
        capsule.Add([.. ended.Facts]);
        var corrected = Readings.Correct(
            diaphragm.Dossier,
            diaphragm.ReadingOf("ringResonanceHz").Reading.Id,
            Numbers.Typed(ringHz),
            "misread",
            diaphragm.Context with
            {
                Actor = Somebody.QualityLead,
            },
            a =>
                new(
                    [],
                    a.Stage == "ring"
                        ? diaphragm.Context
                        : capsule.Context with
                        {
                            Inside = Inside(diaphragm.Dossier, a.Ending!.RecordedAt),
                        }
                ),
            diaphragm.Bench.Stamp(Somebody.QualityLead)
        );
        diaphragm.Add([.. corrected.Facts]);
        var around = corrected.Accepted().Onwards!.Reached(capsule.Dossier);
        capsule.Add([.. around.Facts]);
        return (capsule, around.Accepted());
    }

    private static Fitting FittingOf(APart diaphragm, APart capsule)
    {
        var stamp = capsule.Bench.Stamp(Somebody.Builder);
        return new(
            stamp.NewId(),
            capsule.Dossier.Part.Id,
            capsule.Dossier.OpenAttempt!.Id,
            "diaphragm",
            diaphragm.Dossier.Part.Id,
            null,
            null,
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
    }

    private static IReadOnlyDictionary<string, Input> Inside(Dossier diaphragm, DateTimeOffset moment) =>
        new Dictionary<string, Input> { ["diaphragm"] = PartInput.AsJudgedOn("diaphragm", diaphragm, moment) };
}
