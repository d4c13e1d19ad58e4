using Traceability.Domain.Codes;
using Traceability.Domain.Scanning;
using static Traceability.Domain.Tests.Scanning.BenchStages;

namespace Traceability.Domain.Tests.Scanning;

/// <summary>Leaving an attempt without a result, line by line: it wants a reason in words.</summary>
public class AbandonWalkTests
{
    [Fact]
    public void Abandoning_asks_for_a_reason_in_words()
    {
        var bench = new WalkThrough(Tune with { InstrumentKinds = [] }).SignedIn();

        Walk(
            bench,
            ("ABANDON", Severity.Refused, "Nothing is started"),
            (B(CodeKind.Part, "D26-00017"), Severity.Ok, "START"),
            ("START", Severity.Ask, "Resonance"),
            ("ABANDON", Severity.Ask, "in words"),
            ("912", Severity.Refused, "in words"),
            ("no", Severity.Ask, "Resonance"),
            ("900", Severity.Ok, "inside"),
            ("ABANDON", Severity.Ask, "in words"),
            ("film torn at screw 3", Severity.Ok, "abandoned")
        );

        Assert.Equal("film torn at screw 3", Assert.Single(bench.Orders.OfType<StationCommand.Abandon>()).Reason);
    }

    [Theory]
    [InlineData("F-2611")]
    [InlineData("RB-1")]
    [InlineData("FILM-A")]
    [InlineData("4006381333931")]
    [InlineData("abc123456")]
    [InlineData("LOT 123 A")]
    [InlineData("START")]
    [InlineData("12.5 mV")]
    public void A_code_or_a_number_is_no_reason_for_giving_an_attempt_up(string typed)
    {
        var bench = new WalkThrough(Tune with { InstrumentKinds = [] }).SignedIn();

        Walk(
            bench,
            (B(CodeKind.Part, "D26-00017"), Severity.Ok, "START"),
            ("START", Severity.Ask, "Resonance"),
            ("ABANDON", Severity.Ask, "in words"),
            (typed, Severity.Refused, "in words")
        );
        Walk(bench, (B(CodeKind.Lot, "F-2611"), Severity.Refused, "in words"), (B(CodeKind.Badge, "BUILD2"), Severity.Refused, "in words"));
        Assert.DoesNotContain(bench.Orders, order => order is StationCommand.Abandon);
    }

    [Theory]
    [InlineData("torn", "torn")]
    [InlineData("film torn at screw 3", "film torn at screw 3")]
    [InlineData("FILM TORN", "FILM TORN")]
    [InlineData("übergelaufen", "übergelaufen")]
    [InlineData("re-glued", "re-glued")]
    [InlineData("MISTYPED", "mistyped at the station")]
    public void Words_and_the_printed_reason_are_reasons_for_giving_an_attempt_up(string typed, string reason)
    {
        var bench = new WalkThrough(Tune with { InstrumentKinds = [] }).SignedIn();

        Walk(
            bench,
            (B(CodeKind.Part, "D26-00017"), Severity.Ok, "START"),
            ("START", Severity.Ask, "Resonance"),
            ("ABANDON", Severity.Ask, "in words"),
            (typed, Severity.Ok, "abandoned")
        );
        Assert.Equal(reason, Assert.Single(bench.Orders.OfType<StationCommand.Abandon>()).Reason);
    }
}
