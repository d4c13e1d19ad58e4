using System.Text.Json;
using Traceability.Domain.Codes;
using Traceability.Domain.Scanning;
using static Traceability.Domain.Tests.Scanning.ScannedLines;

namespace Traceability.Domain.Tests.Scanning;

/// <summary>What a session keeps, for whom, and what the facts know better.</summary>
public class StationSessionTests
{
    [Fact]
    public void A_session_comes_back_from_json_as_it_was()
    {
        var bench = Workshop().SignedIn();
        bench.Type("LCR-1");
        bench.Scan(CodeKind.Part, "C26-00001");
        bench.Type("START");
        bench.Type("front");

        var again = JsonSerializer.Deserialize<StationSession>(bench.Json)!;

        Assert.Equal(bench.Json, JsonSerializer.Serialize(again));
        Assert.Equal(("BUILD1", "BENCH-1", "C26-00001", "front"), (again.Badge, again.Station, again.Part, again.ChosenPosition));
        Assert.Equal(WalkThrough.IdOf("C26-00001"), again.AttemptId);
        Assert.Equal([new BenchInstrument("LCR-1", "lcr-meter")], again.Instruments);
        Assert.Equal(bench.Last, again.Last);
    }

    [Fact]
    public void A_person_who_lapsed_finds_the_bench_as_it_was()
    {
        var bench = Workshop().SignedIn();
        bench.Scan(CodeKind.Part, "C26-00001");

        var lapsed = bench.Session.Lapsed();
        var back = StationDesk.After(lapsed, new ScanOutcome.Identified("BUILD1", "A. Builder"), Busy).Session;

        Assert.Equal(Question.Pin, lapsed.Asks);
        Assert.Null(lapsed.Badge);
        Assert.Equal(("BUILD1", "C26-00001"), (back.Badge, back.Part));
    }

    [Fact]
    public void Another_person_finds_the_bench_of_one_who_lapsed_without_the_part()
    {
        var bench = Workshop().SignedIn();
        bench.Scan(CodeKind.Part, "C26-00001");

        var asked = StationDesk.Take(bench.Session.Lapsed(), new Scan.Badge("BUILD2"), Busy).Session;
        var back = StationDesk.After(asked, new ScanOutcome.Identified("BUILD2", "B. Builder"), null).Session;

        Assert.Equal((Question.Pin, "BUILD2"), (asked.Asks, asked.BadgeToProve));
        Assert.Equal(("BUILD2", null), (back.Badge, back.Part));
    }

    [Fact]
    public void Needs_of_another_part_are_passed_over()
    {
        var session = Workshop().SignedIn().Session with { Part = "C26-00002", AttemptId = WalkThrough.IdOf("x") };

        var step = StationDesk.Take(session, ScanParser.Parse("70"), Busy with { AttemptId = WalkThrough.IdOf("y") });

        Assert.Equal(new StationCommand.ShowPart("C26-00002"), step.Command);
    }

    [Fact]
    public void What_the_facts_say_is_open_counts_and_not_what_the_session_believes()
    {
        var session = Workshop().SignedIn().Session with { Part = "C26-00001", AttemptId = WalkThrough.IdOf("closed elsewhere") };

        var step = StationDesk.Take(session, ScanParser.Parse("70"), Busy);

        Assert.IsType<StationCommand.Nothing>(step.Command);
        Assert.Null(step.Session.AttemptId);
    }
}
