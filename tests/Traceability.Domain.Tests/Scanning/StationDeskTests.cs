using Traceability.Domain.Codes;
using Traceability.Domain.Scanning;
using static Traceability.Domain.Tests.Scanning.ScannedLines;

namespace Traceability.Domain.Tests.Scanning;

public class StationDeskTests
{
    [Fact]
    public void An_instrument_that_cannot_be_used_is_put_aside()
    {
        var session = Workshop().SignedIn().Session with { Instruments = [new("LCR-1", "lcr-meter"), new("RB-1", "resonance-bench")] };

        var step = StationDesk.After(
            session,
            new ScanOutcome.InstrumentRefused("LCR-1", "LCR-1 is out of calibration since 3 Nov 2026."),
            null
        );

        Assert.Equal([new BenchInstrument("RB-1", "resonance-bench")], step.Session.Instruments);
        Assert.Equal(Severity.Refused, step.Prompt.Severity);
    }

    [Fact]
    public void A_second_instrument_of_a_kind_takes_the_place_of_the_first()
    {
        var bench = Workshop().Knowing(new Scan.Instrument("LCR-2", "lcr-meter"), "LCR-2").SignedIn();
        bench.Type("LCR-1");
        bench.Type("LCR-2");

        Assert.Equal([new BenchInstrument("LCR-2", "lcr-meter")], bench.Session.Instruments);
    }

    [Fact]
    public void An_instrument_the_stage_does_not_ask_for_is_not_named_at_its_start()
    {
        var bench = Workshop().Knowing(new Scan.Instrument("RB-1", "resonance-bench"), "RB-1").SignedIn();
        bench.Type("RB-1");
        bench.Type("LCR-1");
        bench.Scan(CodeKind.Part, "C26-00001");
        bench.Type("START");

        Assert.Equal(["LCR-1"], Assert.Single(bench.Orders.OfType<StationCommand.OpenAttempt>()).Instruments);
    }

    [Fact]
    public void A_misread_label_says_what_its_end_should_be()
    {
        var bench = Workshop().SignedIn();
        var good = PrintedCode.For(CodeKind.Part, "C26-00001");
        var prompt = bench.Type(good.Text[..^1] + (good.Check == '0' ? '1' : '0'));

        Assert.Equal(Severity.Refused, prompt.Severity);
        Assert.Contains($"should end in {good.Check}", prompt.Detail, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("UNDO", Severity.Refused, "never deleted")]
    [InlineData("NO-SUCH-THING", Severity.Refused, "is not known here")]
    [InlineData("X/Y", Severity.Refused, "neither a code nor a plain number")]
    [InlineData("HELP", Severity.Ask, "Scan a part")]
    public void What_leads_nowhere_says_so(string typed, Severity severity, string says)
    {
        var prompt = Workshop().SignedIn().Type(typed);

        Assert.Equal(severity, prompt.Severity);
        Assert.Contains(says, prompt.Line, StringComparison.Ordinal);
    }

    [Fact]
    public void Missing_files_keep_a_stage_open()
    {
        var session = Workshop().SignedIn().Session with { Part = "C26-00001" };
        var needs = Busy with { AttemptId = WalkThrough.IdOf("a"), Slots = [], Characteristics = [] };

        var step = StationDesk.Take(session, new Scan.Action(StationAction.Done), needs);

        Assert.Equal("Not yet. Send the file: photo of the stack.", step.Prompt.Line);
        Assert.IsType<StationCommand.Nothing>(step.Command);
    }
}
