using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;

namespace Traceability.Domain.Tests.Work.BenchWork;

/// <summary>How a reading is judged stands on it, and who may take, correct or undo it.</summary>
public class ReadingsAndPeopleTests
{
    private static APart Tuning(bool guarded) =>
        new(
            ARoute.Of(
                ARoute.Stage("tune").Measuring("resonanceHz", 880, 920) is { Characteristics: [var c] } stage
                    ? stage with
                    {
                        Characteristics = [c with { Guarded = guarded, ExpandedUncertainty = 1 }],
                    }
                    : throw new InvalidOperationException()
            )
        );

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_reading_says_whether_it_was_judged_by_guarded_acceptance(bool guarded)
    {
        var part = Tuning(guarded).Opened("tune");

        var reading = Assert.Single(part.TryRead(("resonanceHz", "900")).Accepted());

        Assert.Equal((guarded ? true : (bool?)null, (decimal?)1), (reading.Guarded, reading.ExpandedUncertainty));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void So_does_a_computed_one(bool guarded)
    {
        var capacitance = ARoute.Capacitance();
        var part = new APart(
            ARoute.Of(
                capacitance with
                {
                    Characteristics =
                    [
                        .. capacitance.Characteristics.Select(c => c.Entered ? c : c with { Guarded = guarded, ExpandedUncertainty = 1 }),
                    ],
                }
            )
        ).Opened("capacitance");
        part.TryRead(("capacitanceFrontPf", "50"), ("capacitanceRearPf", "50")).Accepted();
        part.TryClose().Accepted();

        Assert.Equal(guarded ? true : null, part.ReadingOf("asymmetryPct").Reading.Guarded);
    }

    [Fact]
    public void A_reading_is_not_corrected_to_a_bound_that_says_nothing_of_its_upper_limit()
    {
        var part = Tuning(guarded: false).Passed("tune");

        Correct(part, "resonanceHz", ">900").IsRefused(RefusalKind.Invalid, ">900");
    }

    [Fact]
    public void Where_only_the_lower_limit_judges_a_bound_is_a_correction()
    {
        var part = new APart(ARoute.Of(ARoute.Stage("insulate").Measuring("insulationGOhm", 400, null))).Passed("insulate");

        Assert.True(Correct(part, "insulationGOhm", ">900").Accepted().Correction.Met);
    }

    [Fact]
    public void The_quality_lead_corrects_without_the_qualification_for_the_work_and_a_builder_does_not()
    {
        var route = ARoute.Of(ARoute.Stage("tune").Measuring("resonanceHz", 880, 920) with { Qualification = "tuning" });
        var part = new APart(route) { Worker = Somebody.Builder.QualifiedFor("tuning") }.Passed("tune");

        part.TryCorrect("resonanceHz", "890", Somebody.QualityLead).Accepted();
        var refusal = part.TryCorrect("resonanceHz", "891", Somebody.OtherBuilder).IsRefused(RefusalKind.Conflict, "not qualified");
        Assert.Equal(RefusalCode.GateClosed, refusal.Code);
    }

    [Fact]
    public void Whoever_may_not_do_the_stage_takes_nothing_out_while_it_is_open()
    {
        var part = new APart(ARoute.Of(ARoute.Stage("stack").Taking("ring", lotKind: "ring") with { Qualification = "stacking" }))
        {
            Worker = Somebody.Builder.QualifiedFor("stacking"),
        }
            .Opened("stack")
            .Filled();
        part.Worker = Somebody.OtherBuilder;

        part.TryRemove("ring").IsRefused(RefusalKind.Conflict, "not qualified");
    }

    [Fact]
    public void What_happened_before_the_attempt_began_is_no_part_of_it_and_clocks_may_differ()
    {
        var part = Tuning(guarded: false).Opened("tune");
        part.Bench.Now = part.Bench.Now.AddMinutes(-2);
        part.TryRead(("resonanceHz", "900")).Accepted();

        var other = Tuning(guarded: false).Opened("tune");
        other.Bench.Now = other.Bench.Now.AddMinutes(-2).AddTicks(-1);
        Assert.Equal(RefusalCode.OutOfOrder, other.TryRead(("resonanceHz", "900")).IsRefused(RefusalKind.Conflict).Code);
    }

    [Fact]
    public void One_of_several_attempts_makes_a_builder_of_the_part()
    {
        var part = new APart(ARoute.Of(ARoute.Stage("mount"), ARoute.Stage("tune").Measuring("resonanceHz", 880, 920))).Passed("mount");
        part.Worker = Somebody.OtherBuilder;
        part.Failed("tune");

        part.TryDecide(DispositionKind.Concession, by: Somebody.Builder).IsRefused(RefusalKind.Forbidden, Somebody.Builder.Name);
    }

    private static Decision<Corrected> Correct(APart part, string characteristic, string typed) =>
        EnteredDecimal.TryParseReading(typed, out var number, out var problem)
            ? Readings.Correct(
                part.Dossier,
                part.ReadingOf(characteristic).Reading.Id,
                number,
                "misread",
                part.Context,
                _ => new([], part.Context),
                part.Bench.Stamp(part.Worker)
            )
            : throw new InvalidOperationException(problem);
}
