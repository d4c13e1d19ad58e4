using Traceability.Domain.Codes;
using Traceability.Domain.Scanning;
using static Traceability.Domain.Tests.Scanning.BenchStages;

namespace Traceability.Domain.Tests.Scanning;

/// <summary>What may be started at the bench, and started again, line by line.</summary>
public class GateWalkTests
{
    [Theory]
    [InlineData(GateSign.Waiting, "The cure ends 14:20.", Severity.Wait)]
    [InlineData(GateSign.Blocked, "Film lot F-7 is on hold.", Severity.Refused)]
    public void A_gate_that_is_not_open_says_why_and_start_says_it_again(GateSign gate, string words, Severity severity)
    {
        var bench = new WalkThrough(Tune with { Gate = gate, GateWords = words }).SignedIn();

        Walk(bench, (B(CodeKind.Part, "D26-00017"), severity, words), ("START", severity, words), ("912", severity, words));
        Assert.DoesNotContain(bench.Orders, order => order is StationCommand.OpenAttempt or StationCommand.RecordReading);
    }

    [Fact]
    public void A_refused_order_changes_nothing_and_can_be_tried_again()
    {
        var refuse = true;
        var bench = new WalkThrough(Tune with { InstrumentKinds = [] })
        {
            Refusing = command =>
                refuse && command is StationCommand.OpenAttempt ? new ScanOutcome.Refused("Another station has just opened it.") : null,
        }.SignedIn();

        Walk(bench, (B(CodeKind.Part, "D26-00017"), Severity.Ok, "START"), ("START", Severity.Refused, "Another station"));
        refuse = false;
        Walk(bench, ("START", Severity.Ask, "Resonance"));
    }

    [Fact]
    public void A_cure_that_was_passed_is_run_once_more_by_scanning_AGAIN_and_START()
    {
        var trim = new StageNeeds("D26-00001", "trim", "Trim", GateSign.Waiting, "Open from 14:20.")
        {
            Repeatable = new("cure", "Cure on the heated plate"),
        };
        var bench = new WalkThrough(trim).SignedIn(station: "PLATE-1");
        bench.OnceMore["D26-00001"] = Cure("D26-00001") with { Repeatable = trim.Repeatable };

        Walk(bench, (B(CodeKind.Part, "D26-00001"), Severity.Wait, "Open from 14:20."));
        Assert.Contains("Scan AGAIN to run Cure on the heated plate once more", bench.Last.Detail, StringComparison.Ordinal);
        Walk(
            bench,
            ("AGAIN", Severity.Ok, "Scan START, or more parts for the same run."),
            (B(CodeKind.Part, "D26-00002"), Severity.Ok, "2 collected."),
            ("START", Severity.Ok, "The run is started for 2 parts.")
        );

        Assert.True(Assert.Single(bench.Orders.OfType<StationCommand.AddToLoad>()).Again);
        Assert.Equal("cure", Assert.Single(bench.Orders.OfType<StationCommand.StartLoad>()).StageCode);
    }

    [Fact]
    public void AGAIN_is_refused_where_nothing_may_be_run_again_and_forgotten_with_the_part()
    {
        var bench = new WalkThrough(
            new StageNeeds("D26-00001", "trim", "Trim", GateSign.Open, "Open."),
            Cure("D26-00002") with
            {
                Repeatable = new("cure", "Cure"),
            }
        ).SignedIn();

        Walk(
            bench,
            ("AGAIN", Severity.Refused, "Scan a part first."),
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "START"),
            ("AGAIN", Severity.Refused, "passed no stage that may be run again")
        );
        Assert.Null(bench.Session.Repeats);
        Walk(
            bench,
            ("CLEAR", Severity.Ask, "clear"),
            (B(CodeKind.Part, "D26-00002"), Severity.Ok, "START"),
            ("AGAIN", Severity.Ok, "START")
        );
        Assert.Equal("cure", bench.Session.Repeats);
        Walk(bench, ("CLEAR", Severity.Ask, "clear"));
        Assert.Null(bench.Session.Repeats);
    }
}
