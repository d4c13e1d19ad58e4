using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;

namespace Traceability.Domain.Tests.Work.BenchWork;

public class CloseAttemptTests
{
    private static APart Tuning =>
        new(ARoute.Of(ARoute.Stage("tune").Measuring("resonanceHz", 880, 920).Measuring("humidityPct", null, null), ARoute.Stage("trim")));

    private static APart Photographed =>
        new(ARoute.Of(ARoute.Stage("soak") with { Evidence = [new("log", "climate-log", true), new("note", "climate-log", false)] }));

    private const string Log = "time,temperature_c,humidity_pct\n2026-03-02T08:00:00Z,20,50\n2026-03-02T08:01:00Z,20,50\n";

    [Theory]
    [InlineData("879.99", Verdict.Fail)]
    [InlineData("880.00", Verdict.Pass)]
    [InlineData("880.01", Verdict.Pass)]
    [InlineData("919.99", Verdict.Pass)]
    [InlineData("920.00", Verdict.Pass)]
    [InlineData("920.01", Verdict.Fail)]
    public void A_value_on_its_limit_meets_it(string digits, Verdict verdict)
    {
        var part = Tuning.Opened("tune");
        part.TryRead(("resonanceHz", digits), ("humidityPct", "50")).Accepted();

        var closing = part.TryClose().Accepted();

        Assert.Equal(verdict, closing.Verdict);
        Assert.Equal(verdict == Verdict.Fail, closing.Nonconformity is not null);
        Assert.Equal(verdict == Verdict.Pass, part.Dossier.IsPassed("tune"));
    }

    private static APart Guarded =>
        new(
            ARoute.Of(
                ARoute.Stage("tune") with
                {
                    Characteristics =
                    [
                        new("resonanceHz", "resonance", "Hz", null, 880, 920, null, true, false)
                        {
                            ExpandedUncertainty = 2,
                            Guarded = true,
                        },
                    ],
                },
                ARoute.Stage("trim")
            )
        );

    [Theory]
    [InlineData("879.99", Verdict.Fail)]
    [InlineData("880.00", Verdict.Conditional)]
    [InlineData("881.64", Verdict.Conditional)]
    [InlineData("881.65", Verdict.Pass)]
    public void A_value_not_shown_to_conform_is_conditional_and_does_not_count(string digits, Verdict verdict)
    {
        var part = Guarded.Opened("tune");
        part.TryRead(("resonanceHz", digits)).Accepted();

        Assert.Equal(verdict, part.TryClose().Accepted().Verdict);
        Assert.Equal(verdict, part.Dossier.Attempts[0].Verdict);
        Assert.Equal(verdict == Verdict.Pass, part.Dossier.IsPassed("tune"));
    }

    [Fact]
    public void A_conditional_verdict_states_the_probability_and_waits_for_a_decision()
    {
        var part = Guarded.Opened("tune");
        part.TryRead(("resonanceHz", "880.5")).Accepted();

        var closing = part.TryClose().Accepted();

        Assert.Equal(
            ["resonanceHz 880.5 Hz is inside 880 to 920 Hz, but with U = 2 Hz not shown to conform: probability of conformance 69.1 %"],
            closing.Findings
        );
        Assert.Equal(NonconformityCodes.StageConditional, closing.Nonconformity!.Code);
        Assert.True(part.Decided(DispositionKind.Concession).Dossier.IsPassed("tune"));
    }

    [Fact]
    public void A_correction_clear_of_the_guard_band_answers_a_conditional_verdict()
    {
        var part = Guarded.Opened("tune");
        part.TryRead(("resonanceHz", "880.5")).Accepted();
        part.TryClose().Accepted();

        part.TryCorrect("resonanceHz", "890.5").Accepted();

        Assert.Equal(Verdict.Pass, part.Dossier.Attempts[0].Verdict);
        Assert.Empty(part.Dossier.OpenNonconformities());
    }

    [Fact]
    public void A_fail_says_what_was_outside_which_limits()
    {
        var part = Tuning.Opened("tune");
        part.TryRead(("resonanceHz", "921.50"), ("humidityPct", "50")).Accepted();

        var closing = part.TryClose().Accepted();

        Assert.Equal(["resonanceHz 921.50 Hz is outside 880 to 920 Hz"], closing.Findings);
        Assert.Contains("Tune failed: resonanceHz 921.50", closing.Nonconformity!.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void Missing_readings_are_all_named_and_what_was_recorded_is_kept()
    {
        var part = Tuning.Opened("tune");
        part.TryClose().IsRefused(RefusalKind.Conflict, "Tune still needs: resonanceHz, humidityPct", "kept");
        part.TryRead(("resonanceHz", "900")).Accepted();

        part.TryClose().IsRefused(RefusalKind.Conflict, "Tune still needs: humidityPct.");

        Assert.Equal(900m, part.ReadingOf("resonanceHz").Value);
        Assert.NotNull(part.Dossier.OpenAttempt);
    }

    [Fact]
    public void A_reading_that_may_be_left_open_is_not_missed_but_is_judged_where_it_was_taken()
    {
        var route = ARoute.Of(
            ARoute.Stage("inspect") with
            {
                Characteristics = [new("sheetOhm", "Sheet", "Ohm/sq", null, 1, 3, null, true, false, Required: false)],
            }
        );
        var measured = new APart(route).Opened("inspect");
        measured.TryRead(("sheetOhm", "3.1")).Accepted();

        Assert.Equal(Verdict.Pass, new APart(route).Opened("inspect").TryClose().Accepted().Verdict);
        Assert.Equal(Verdict.Fail, measured.TryClose().Accepted().Verdict);
    }

    [Fact]
    public void Missing_evidence_is_named_where_it_is_required()
    {
        var part = Photographed.Opened("soak");

        part.TryClose().IsRefused(RefusalKind.Conflict, "Soak still needs: log (climate-log file).");
        part.TryAttach("log", "climate-log", Log).Accepted();
        part.TryClose().Accepted();
    }

    [Fact]
    public void A_file_that_cannot_be_read_is_refused_while_the_good_one_is_still_at_hand()
    {
        var part = Photographed.Opened("soak");

        part.TryAttach("log", "climate-log", Log + "2026-03-02T08:02:00Z,warm,50\n")
            .IsRefused(RefusalKind.Invalid, "Line 4", "Nothing was stored");
        part.TryAttach("curve", "climate-log", Log).IsRefused(RefusalKind.Invalid, "takes no file 'curve'", "log (climate-log)");
    }

    [Fact]
    public void An_attempt_is_closed_once()
    {
        var part = Tuning.Passed("tune");

        part.TryClose().IsRefused(RefusalKind.Conflict, "was closed", "verdict pass");
        part.TryRead(("resonanceHz", "900")).IsRefused(RefusalKind.Conflict, "was closed");
        part.TryAbandon().IsRefused(RefusalKind.Conflict, "was closed");
    }

    [Fact]
    public void An_attempt_that_nobody_opened_is_not_found() => Tuning.TryClose().IsRefused(RefusalKind.NotFound, "C-1 has no attempt");

    [Fact]
    public void An_attempt_does_not_end_before_it_began()
    {
        var part = new APart(ARoute.Plain).Opened("mount");

        part.TryClose(part.Bench.Now.AddSeconds(-1)).IsRefused(RefusalKind.Conflict, "before it began");
        part.TryClose(part.Bench.Now).Accepted();
    }

    [Fact]
    public void A_part_leaves_its_carrier_where_the_route_says_so_and_only_when_it_passed()
    {
        var route = ARoute.Of(ARoute.Stage("release").Measuring("heightUm", 0, 9) with { FreesCarrier = true });
        var (good, bad) = (new APart(route).Opened("release"), new APart(route).Opened("release"));
        good.Around = bad.Around = PartPlacement.None with { CarrierCode = "JIG-4" };
        good.TryRead(("heightUm", "9")).Accepted();
        bad.TryRead(("heightUm", "9.1")).Accepted();

        Assert.Equal("JIG-4", good.TryClose().Facts.OfType<CarrierRelease>().Single().CarrierCode);
        Assert.Empty(bad.TryClose().Facts.OfType<CarrierRelease>());
    }

    [Fact]
    public void A_computed_value_names_its_method_and_version_and_is_judged_like_any_other()
    {
        var part = new APart(ARoute.Of(ARoute.Capacitance())).Opened("capacitance");
        part.TryRead(("capacitanceFrontPf", "50"), ("capacitanceRearPf", "60")).Accepted();

        Assert.Equal(Verdict.Fail, part.TryClose().Accepted().Verdict);
        var asymmetry = part.ReadingOf("asymmetryPct").Reading;
        Assert.Equal(
            (18.18m, ReadingSource.Computed, "capacitance", 3),
            (asymmetry.Value, asymmetry.Source, asymmetry.Method, asymmetry.MethodVersion)
        );
    }

    [Fact]
    public void Values_that_cannot_be_are_not_judged_and_the_attempt_stays_open()
    {
        var part = new APart(ARoute.Of(ARoute.Capacitance())).Opened("capacitance");
        part.TryRead(("capacitanceFrontPf", "0"), ("capacitanceRearPf", "0")).Accepted();

        part.TryClose().IsRefused(RefusalKind.Conflict, "cannot be", "Nothing was judged");
        Assert.NotNull(part.Dossier.OpenAttempt);
    }

    [Theory]
    [InlineData("1e-15", "1e15", false)]
    [InlineData("1", "1000001", false)]
    [InlineData("1", "1000000", true)]
    [InlineData("1e15", "1e-15", true)]
    public void Insulation_readings_too_far_apart_to_divide_are_not_judged_and_never_overflow(string at15, string at60, bool judged)
    {
        var stage = ARoute
            .Stage("insulation")
            .Measuring("insulationAt15sGohm", null, null)
            .Measuring("insulationAt60sGohm", null, null)
            .Computing("insulationRatio", "ratio");
        var part = new APart(ARoute.Of(ARoute.Stage("capacitance").Measuring("pullInV", 70, 90), stage with { Method = "insulation" }))
            .Passed("capacitance")
            .Opened("insulation");
        part.TryRead(("insulationAt15sGohm", at15), ("insulationAt60sGohm", at60)).Accepted();

        Assert.Equal(judged, part.TryClose().Refusal is null);
    }

    [Fact]
    public void A_stage_does_not_end_once_an_earlier_one_no_longer_counts()
    {
        var part = Tuning.Passed("tune").Opened("trim");
        part.TryCorrect("resonanceHz", "870", Somebody.QualityLead).Accepted();

        part.EndRule("trim", "earlier-stages").IsNotMet("Tune");
        part.TryClose().IsRefused(RefusalKind.Conflict, "not passed yet: Tune");
    }
}
