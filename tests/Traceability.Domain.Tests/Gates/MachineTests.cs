using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;

namespace Traceability.Domain.Tests.Gates;

/// <summary>A machine that sends under its own name works for whoever opened the attempt; a person answers for the own hands.</summary>
public class MachineTests
{
    private static Actor With(params Role[] roles) => Somebody.Builder with { Roles = roles.ToHashSet() };

    [Theory]
    [InlineData(true, Role.Instrument)]
    [InlineData(true, Role.Instrument, Role.Importer)]
    [InlineData(false, Role.Instrument, Role.Builder)]
    [InlineData(false, Role.Instrument, Role.Quality)]
    [InlineData(false, Role.Builder)]
    [InlineData(false, Role.Service)]
    [InlineData(false)]
    public void A_machine_is_an_instrument_that_is_neither_builder_nor_quality_lead(bool isMachine, params Role[] roles) =>
        Assert.Equal(isMachine, With(roles).IsMachine);

    [Fact]
    public void A_machine_needs_no_qualification_for_a_stage_and_a_person_does()
    {
        var part = new APart(ARoute.Of(ARoute.Stage("bond") with { Qualification = "bonding" }));
        GateVerdict Worker(Actor? actor) =>
            Gatekeeper.EvaluatePerson(part.Dossier, part.StageOf("bond"), part.Context with { Actor = actor });

        Assert.True(Worker(With(Role.Instrument)).Open);
        Assert.Empty(Worker(With(Role.Instrument)).Checks);
        Assert.False(Worker(Somebody.Builder).Open);
        Assert.True(Worker(Somebody.Builder.QualifiedFor("bonding")).Open);
        Assert.NotEmpty(Worker(Somebody.Builder.QualifiedFor("bonding")).Checks);
    }
}
