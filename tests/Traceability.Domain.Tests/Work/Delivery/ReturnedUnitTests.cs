using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;
using Traceability.Domain.Work.Delivery;

namespace Traceability.Domain.Tests.Work.Delivery;

/// <summary>A unit that came back: taken in once, looked at, said how it came out, closed.</summary>
public class ReturnedUnitTests
{
    private static APart Out =>
        new APart(ARoute.Of(ARoute.Stage("body"), ARoute.Stage("inspect")) with { Kind = PartKinds.Unit })
            .Passed("body", "inspect")
            .Certified()
            .Shipped();

    private static APart Back => Out.CameBack();

    private static Stamp Stamp(APart part) => part.Bench.Stamp(Somebody.ServiceDesk);

    private static Guid ReturnOf(APart part) => part.Dossier.Of<UnitReturn>().Last().Id;

    private static Decision<UnitReturn> Open(APart part, string complaint = "crackles", string? reference = null) =>
        ReturnedUnit.Open(part.Dossier, complaint, reference, Stamp(part));

    private static Decision<ReturnFinding> Find(
        APart part,
        string code = "bad-contact",
        string description = "a contact opens",
        Guid? of = null
    ) => ReturnedUnit.Find(part.Dossier, of ?? ReturnOf(part), code, description, Stamp(part));

    private static Decision<ReturnOutcome> ComeOut(APart part, ReturnOutcomeKind kind, string reason = "looked at it") =>
        ReturnedUnit.ComeOut(part.Dossier, ReturnOf(part), kind, reason, Stamp(part));

    private static Decision<ReturnClosing> Close(APart part, string action = "soldered") =>
        ReturnedUnit.Close(part.Dossier, ReturnOf(part), action, Stamp(part));

    private static APart Scrapped()
    {
        var part = Back;
        part.TryRaise().Accepted();
        return part.Decided(DispositionKind.Scrap);
    }

    [Fact]
    public void A_shipped_unit_is_taken_back_in_with_the_complaint_as_it_was_said()
    {
        var opened = Open(Out, " crackles ", " RMA 7 ").Accepted();

        Assert.Equal(("crackles", "RMA 7"), (opened.Complaint, opened.CustomerReference));
        Assert.Null(Open(Out, reference: "  ").Accepted().CustomerReference);
        Assert.Null(Open(Out).Accepted().CustomerReference);
    }

    [Fact]
    public void A_return_needs_a_complaint_and_a_reference_of_at_most_a_hundred_letters()
    {
        Assert.Equal(["complaint"], Open(Out, " ").IsRefused(RefusalKind.Invalid).Errors.Keys);
        Assert.Equal(["customerReference"], Open(Out, reference: new string('x', 101)).IsRefused(RefusalKind.Invalid, "100").Errors.Keys);
        Open(Out, reference: new string('x', 100)).Accepted();
    }

    [Fact]
    public void Only_what_was_shipped_and_has_not_come_back_yet_comes_back()
    {
        var here = new APart(Out.Dossier.Route).Passed("body", "inspect");

        Open(here).IsRefused(RefusalKind.Conflict, Words.Of(PartState.Finished));
        Open(Back).IsRefused(RefusalKind.Conflict, Words.Of(StandingCode.Returned));
        Open(Scrapped()).IsRefused(RefusalKind.Conflict, Words.Of(PartState.Scrapped));
        Open(Back.Shipped()).Accepted();
    }

    [Theory]
    [InlineData(-1, false)]
    [InlineData(0, true)]
    [InlineData(1, true)]
    public void A_unit_does_not_come_back_before_it_was_shipped(int minutes, bool taken)
    {
        var part = Out;
        part.Bench.Later(minutes);

        Assert.Equal(taken ? null : RefusalCode.OutOfOrder, Open(part).Refusal?.Code);
    }

    [Fact]
    public void A_finding_has_a_code_in_small_letters_and_words()
    {
        Assert.Equal("hums", Find(Back, description: " hums ").Accepted().Description);
        Assert.Equal(["code"], Find(Back, "Bad contact").IsRefused(RefusalKind.Invalid).Errors.Keys);
        Assert.Equal(["description"], Find(Back, description: " ").IsRefused(RefusalKind.Invalid).Errors.Keys);
        Find(Back, of: Guid.NewGuid()).IsRefused(RefusalKind.NotFound, "C-1");
    }

    [Fact]
    public void How_a_return_came_out_needs_a_reason()
    {
        Assert.Equal(["reason"], ComeOut(Back, ReturnOutcomeKind.NoFault, " ").IsRefused(RefusalKind.Invalid).Errors.Keys);
        Assert.Equal("it plays", ComeOut(Back, ReturnOutcomeKind.NoFault, " it plays ").Accepted().Reason);
    }

    [Fact]
    public void It_comes_out_as_scrapped_exactly_when_that_was_decided()
    {
        ComeOut(Back, ReturnOutcomeKind.Scrapped).IsRefused(RefusalKind.Conflict, "C-1");
        ComeOut(Scrapped(), ReturnOutcomeKind.Scrapped).Accepted();
        Assert.NotEqual(
            ComeOut(Back, ReturnOutcomeKind.Scrapped).Refusal!.Message,
            ComeOut(Scrapped(), ReturnOutcomeKind.Repaired).IsRefused(RefusalKind.Conflict, "C-1").Message
        );
    }

    [Fact]
    public void A_return_is_closed_when_something_was_found_and_somebody_said_how_it_came_out()
    {
        var part = Back;
        Assert.Equal(["return-finding", "return-outcome"], Close(part).IsRefused(RefusalKind.Conflict).Checks.Select(c => c.Rule));

        part.Add([.. Find(part).Facts]);
        Assert.Equal(["return-outcome"], Close(part).IsRefused(RefusalKind.Conflict).Checks.Select(c => c.Rule));

        part.Add([.. ComeOut(part, ReturnOutcomeKind.Repaired).Facts]);
        Assert.Equal("soldered", Close(part, " soldered ").Accepted().Action);
        Assert.Equal(["action"], Close(part, " ").IsRefused(RefusalKind.Invalid).Errors.Keys);
    }

    [Fact]
    public void What_a_closed_return_asked_for_is_met_and_says_so()
    {
        var checks = ReturnedUnit.MissingToClose(BackAgain.Now(Back.CameOut(ReturnOutcomeKind.NoFault).Dossier)!);

        Assert.Equal([("return-finding", true), ("return-outcome", true)], checks.Select(c => (c.Rule, c.Met)));
        Assert.All(checks, c => Assert.NotEmpty(c.Because));
    }

    [Fact]
    public void Nothing_is_added_to_a_return_that_was_closed()
    {
        var part = Back.CameOut(ReturnOutcomeKind.NoFault);

        Assert.Equal(RefusalCode.AlreadyDone, Find(part).IsRefused(RefusalKind.Conflict, "done").Code);
        Assert.Equal(RefusalCode.AlreadyDone, ComeOut(part, ReturnOutcomeKind.NoFault).IsRefused(RefusalKind.Conflict, "done").Code);
        Assert.Equal(RefusalCode.AlreadyDone, Close(part).IsRefused(RefusalKind.Conflict, "done").Code);
    }
}
