using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;

namespace Traceability.Domain.Tests.Gates;

/// <summary>Where two people are asked for: another person, or in a workshop of one a second sign-in with a reason.</summary>
public sealed class SecondPersonTests
{
    private static readonly Actor Person = new(Guid.NewGuid(), "P1", "Pat One", new HashSet<Role> { Role.Quality }, []);

    private static APart Built
    {
        get
        {
            var part = new APart(ARoute.Of(ARoute.Stage("stack"), ARoute.Stage("inspect") with { NotByBuilderOf = ["stack"] }));
            return part.Passed("stack");
        }
    }

    [Theory]
    [InlineData(false, false, null, SecondPersonNeed.None)]
    [InlineData(false, true, null, SecondPersonNeed.None)]
    [InlineData(true, false, "alone this month", SecondPersonNeed.Another)]
    [InlineData(true, true, null, SecondPersonNeed.Reason)]
    [InlineData(true, true, "  ", SecondPersonNeed.Reason)]
    [InlineData(true, true, "alone this month", SecondPersonNeed.Alone)]
    public void Another_person_or_in_a_workshop_of_one_a_reason(bool own, bool singleHanded, string? because, SecondPersonNeed need) =>
        Assert.Equal(need, SecondPerson.Of((Person with { SingleHanded = singleHanded ? new() : null }).Alone(because), own));

    [Fact]
    public void A_second_sign_in_opens_the_stage_for_the_same_person_and_for_one_attempt()
    {
        var part = Built;
        part.Worker = Alone(Somebody.Builder);
        part.Rule("inspect", TwoPeople.Rule).IsNotMet("the builder did");
        Assert.Contains("second time", part.Rule("inspect", TwoPeople.Rule).Remedy, StringComparison.Ordinal);

        part.TrySign("inspect", "alone this month").Accepted();
        part.Rule("inspect", TwoPeople.Rule).IsMet();
        part.Opened("inspect");
        part.TryAbandon().Accepted();
        part.Rule("inspect", TwoPeople.Rule).IsNotMet("the builder did");
    }

    [Fact]
    public void Where_two_people_work_a_second_sign_in_is_refused_and_one_of_before_opens_nothing()
    {
        var part = Built;
        part.TrySign("inspect", "alone this month").IsRefused(RefusalKind.Conflict, "somebody else does it");

        part.Worker = Alone(Somebody.Builder);
        part.TrySign("inspect", "alone this month").Accepted();
        part.Worker = Somebody.Builder;
        part.Rule("inspect", TwoPeople.Rule).IsNotMet("the builder did");
    }

    [Fact]
    public void A_second_sign_in_without_a_reason_or_without_need_is_refused()
    {
        var part = Built;
        part.Worker = Alone(Somebody.Builder);
        part.TrySign("inspect", " ").IsRefused(RefusalKind.Invalid, "say why one person does here what two should");
        part.TrySign("stack", "alone").IsRefused(RefusalKind.Conflict, "needs no second sign-in");
        part.Worker = Alone(Somebody.OtherBuilder);
        part.TrySign("inspect", "alone").IsRefused(RefusalKind.Conflict, "needs no second sign-in");
    }

    private static Actor Alone(Actor somebody) => somebody with { SingleHanded = new() };
}
