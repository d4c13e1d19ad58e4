using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;

namespace Traceability.Domain.Tests.Gates;

public class PeopleRulesTests
{
    private static APart Bonding(Actor worker) =>
        new(ARoute.Of(ARoute.Stage("bond") with { Qualification = "bonding" })) { Worker = worker };

    private static APart BuiltAndWaitingForInspection =>
        new APart(
            ARoute.Of(
                ARoute.Stage("stack").Taking("screws", "screws").Measuring("torqueNcm", 1, 2),
                ARoute.Stage("inspect") with
                {
                    NotByBuilderOf = ["stack"],
                }
            )
        );

    [Theory]
    [InlineData(1, false)]
    [InlineData(2, true)]
    [InlineData(3, true)]
    public void A_qualification_is_good_to_the_end_of_its_last_day(int lastDayOfMarch, bool qualified)
    {
        var part = Bonding(Somebody.Builder.QualifiedFor("bonding", new(2026, 3, lastDayOfMarch)));

        Assert.Equal(qualified, part.Rule("bond", BuilderQualified.Rule).Met);
        Assert.Equal(qualified, part.TryOpen("bond").Refusal is null);
    }

    [Fact]
    public void The_last_day_of_a_qualification_ends_at_the_workshops_midnight()
    {
        var builder = Somebody.Builder.QualifiedFor("bonding", new(2026, 3, 2));
        var bench = new Bench
        {
            Now = new(2026, 3, 2, 15, 0, 0, TimeSpan.Zero),
            Calendar = new(TimeZoneInfo.CreateCustomTimeZone("nine hours ahead", TimeSpan.FromHours(9), null, null)),
        };

        new APart(Bonding(builder).Dossier.Route, bench) { Worker = builder }
            .Rule("bond", BuilderQualified.Rule)
            .IsNotMet("not qualified for bonding");
    }

    [Fact]
    public void The_latest_word_on_a_qualification_counts()
    {
        var taken = Somebody.Builder.QualifiedFor("bonding").QualifiedFor("bonding", given: false, grantedAfterDays: 1);

        Bonding(taken).Rule("bond", BuilderQualified.Rule).IsNotMet("the builder is not qualified for bonding");
        Bonding(taken.QualifiedFor("bonding", grantedAfterDays: 2)).Rule("bond", BuilderQualified.Rule).IsMet();
    }

    [Fact]
    public void Somebody_who_is_no_builder_does_not_work_on_a_part()
    {
        var part = new APart(ARoute.Plain) { Worker = Somebody.ServiceDesk };

        part.Rule("mount", BuilderQualified.Rule).IsNotMet("the service desk is not a builder");
        part.Worker = Somebody.QualityLead;
        part.Rule("mount", BuilderQualified.Rule).IsMet();
    }

    [Fact]
    public void An_attempt_is_not_ended_by_somebody_who_is_not_qualified()
    {
        var part = Bonding(Somebody.Builder.QualifiedFor("bonding")).Opened("bond");
        part.Worker = Somebody.OtherBuilder;

        part.TryClose().IsRefused(RefusalKind.Conflict, "the other builder is not qualified for bonding");
    }

    [Fact]
    public void A_gate_that_is_only_looked_at_says_nothing_of_people_and_instruments()
    {
        var part = Bonding(Somebody.Builder);
        var looked = Gatekeeper.Evaluate(part.Dossier, part.StageOf("bond"), new GateContext(part.Bench.Now, part.Bench.Calendar));

        Assert.DoesNotContain(looked.Checks, c => c.Rule is BuilderQualified.Rule or InstrumentsUsable.Rule or TwoPeople.Rule);
    }

    [Fact]
    public void Who_builds_does_not_inspect_where_the_route_says_so()
    {
        var part = BuiltAndWaitingForInspection.Passed("stack");

        part.Rule("inspect", TwoPeople.Rule).IsNotMet("the builder did Stack");
        part.TryOpen("inspect").IsRefused(RefusalKind.Conflict, "the builder did Stack");
        part.Worker = Somebody.OtherBuilder;
        part.Rule("inspect", TwoPeople.Rule).IsMet();
        part.Passed("inspect");
    }

    [Fact]
    public void Who_only_ended_the_building_does_not_inspect_either()
    {
        var part = BuiltAndWaitingForInspection.Opened("stack").Filled();
        part.TryRead(("torqueNcm", "1.5")).Accepted();
        part.Worker = Somebody.OtherBuilder;
        part.TryClose().Accepted();

        part.Rule("inspect", TwoPeople.Rule).IsNotMet("the other builder did Stack");
    }

    [Fact]
    public void Who_only_fitted_or_measured_does_not_inspect_either()
    {
        var part = BuiltAndWaitingForInspection.Opened("stack");
        part.Worker = Somebody.OtherBuilder;
        part.Filled();
        part.Worker = Somebody.Importer;
        part.TryRead(("torqueNcm", "1.5")).Accepted();
        part.Worker = Somebody.Builder;
        part.TryClose().Accepted();

        foreach (var helper in new[] { Somebody.OtherBuilder, Somebody.Importer })
        {
            part.Worker = helper;
            part.Rule("inspect", TwoPeople.Rule).IsNotMet($"{helper.Name} did Stack");
        }
    }

    [Fact]
    public void An_inspection_that_another_opened_is_not_ended_by_who_built()
    {
        var part = BuiltAndWaitingForInspection.Passed("stack");
        part.Worker = Somebody.OtherBuilder;
        part.Opened("inspect");
        part.Worker = Somebody.Builder;

        part.TryClose().IsRefused(RefusalKind.Conflict, "the builder did Stack");
    }
}
