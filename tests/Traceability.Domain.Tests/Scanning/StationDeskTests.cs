using System.Text.Json;
using CsCheck;
using Traceability.Domain.Codes;
using Traceability.Domain.Scanning;

namespace Traceability.Domain.Tests.Scanning;

public class StationDeskTests
{
    private const string UnlikelyPin = "739182645";

    private static readonly StageNeeds Busy = new("C26-00001", "stack", "Clean and stack", GateSign.Open, "Open.")
    {
        Slots = [new("front", "Front", null, "diaphragm"), new("spacer", "Spacer", "spacer", null)],
        Characteristics = [new("capacitanceFrontPf", "Capacitance front", "pF", 60m, 80m)],
        Evidence = ["photo of the stack"],
        InstrumentKinds = ["lcr-meter"],
    };

    private static readonly string[] Lines =
    [
        "",
        "12.5",
        "1,234",
        "nan",
        "some words here",
        "D26-00001",
        "SP-1",
        "LCR-1",
        "front",
        "X/Y",
        "ä",
        "PT-D26-00001-?",
        "PT-D26-00001-0",
        UnlikelyPin,
        UnlikelyPin + " ",
        "1111",
        "7391 82645",
        .. StationActions.All.Select(action => action.Word()),
        Code(CodeKind.Badge, "BUILD1"),
        Code(CodeKind.Badge, "BUILD2"),
        Code(CodeKind.Station, "BENCH-1"),
        Code(CodeKind.Carrier, "JIG-1"),
        Code(CodeKind.Part, "C26-00001"),
        Code(CodeKind.Part, "L26-00001"),
        Code(CodeKind.Part, "L26-00002"),
        Code(CodeKind.Part, "L26-00003"),
        Code(CodeKind.Part, "D26-00001"),
        Code(CodeKind.Lot, "SP-1"),
        Code(CodeKind.Instrument, "LCR-1"),
        Code(CodeKind.Position, "front"),
    ];

    private static string Code(CodeKind kind, string id) => PrintedCode.For(kind, id).Text;

    private static StageNeeds Load(string serial) => new(serial, "cure", "Cure", GateSign.Open, "Open.") { MayRunAsLoad = true };

    private static WalkThrough Workshop(bool moody = false)
    {
        var count = 0;
        return new WalkThrough(Busy, Load("L26-00001"), Load("L26-00002"), Load("L26-00003"))
        {
            RightPin = UnlikelyPin,
            Refusing = command =>
                moody && command is not StationCommand.AddToLoad && count++ % 3 == 2 ? new ScanOutcome.Refused("Not now.") : null,
        }
            .KnowingParts("diaphragm", "D26-00001")
            .KnowingLots("spacer", "SP-1")
            .Knowing(new Scan.Part("C26-00001", "capsule"), "JIG-1")
            .Knowing(new Scan.Instrument("LCR-1", "lcr-meter"), "LCR-1");
    }

    private static readonly Gen<string[]> Sequences = Gen.Int[0, Lines.Length - 1].Select(i => Lines[i]).Array[0, 60];

    [Fact]
    public void No_sequence_of_scans_throws_and_every_one_is_answered() =>
        Gen.Select(Sequences, Gen.Bool, Gen.Bool)
            .Sample(
                (lines, signedIn, moody) =>
                {
                    var bench = Workshop(moody);
                    if (signedIn)
                        bench.SignedIn();
                    return lines.All(line => bench.Type(line).Line.Length > 0);
                }
            );

    [Fact]
    public void No_text_whatever_throws() =>
        Gen.Select(Gen.String, Gen.Int[0, 3])
            .Sample(
                (text, stage) =>
                {
                    var bench = Workshop();
                    if (stage > 0)
                        bench.SignedIn();
                    if (stage > 1)
                        bench.Scan(CodeKind.Part, "C26-00001");
                    if (stage > 2)
                    {
                        bench.Type("LCR-1");
                        bench.Type("START");
                    }
                    return bench.Type(text).Line.Length > 0;
                }
            );

    // A number is shown only when it was asked for as a reading; the readings here are never the PIN unless it was typed as one.
    [Fact]
    public void The_pin_is_in_no_session_and_no_prompt() =>
        Gen.Select(Sequences, Gen.Bool)
            .Sample(
                (lines, moody) =>
                {
                    var bench = Workshop(moody);
                    foreach (var line in lines)
                    {
                        var isPin = line.Contains("7391", StringComparison.Ordinal);
                        if (isPin && bench.Session is { AttemptId: not null, Asks: Question.None })
                            continue; // there it would be a reading
                        if (isPin && bench.Session is { Asks: Question.None, Badge: not null })
                            continue;
                        bench.Type(line);
                    }
                    return bench.Kept.TrueForAll(kept => !kept.Contains("7391", StringComparison.Ordinal));
                }
            );

    [Theory]
    [InlineData("1234")]
    [InlineData("0012")]
    [InlineData("1,234")]
    [InlineData("12345678901234567890")]
    [InlineData("my secret")]
    public void Whatever_is_typed_for_a_pin_reaches_the_check_as_it_was_typed(string typed)
    {
        var bench = Workshop();
        bench.Scan(CodeKind.Badge, "BUILD1");
        bench.Type(typed);

        Assert.Equal(typed, Assert.IsType<StationCommand.Identify>(Assert.Single(bench.Orders)).Pin.Reveal());
        Assert.DoesNotContain(bench.Kept, kept => kept.Contains(typed, StringComparison.Ordinal));
        Assert.Equal(Question.Pin, bench.Session.Asks);
    }

    [Theory]
    [InlineData("BUILD1")]
    [InlineData("build1 ")]
    public void The_own_badge_typed_or_scanned_where_the_PIN_is_asked_is_not_taken_for_a_PIN(string typed)
    {
        var bench = Workshop();
        bench.Scan(CodeKind.Badge, "BUILD1");
        var byHand = bench.Type(typed);
        var byScanner = bench.Scan(CodeKind.Badge, "BUILD1");

        Assert.Equal(
            [(Severity.Ask, "Type your PIN."), (Severity.Ask, "Type your PIN.")],
            new[] { byHand, byScanner }.Select(prompt => (prompt.Severity, prompt.Line))
        );
        Assert.DoesNotContain(bench.Orders, order => order is StationCommand.Identify);
        bench.Type(UnlikelyPin);
        Assert.Equal("BUILD1", bench.Session.Badge);
    }

    [Theory]
    [InlineData("4711")]
    [InlineData("4711 4711")]
    [InlineData("4711x/")]
    public void A_pin_typed_before_the_badge_is_not_shown(string typed)
    {
        var bench = Workshop();
        var prompt = bench.Type(typed);

        Assert.Equal("Scan your badge first.", prompt.Line);
        Assert.DoesNotContain(bench.Kept, kept => kept.Contains("4711", StringComparison.Ordinal));
    }

    [Fact]
    public void A_collected_part_leaves_only_when_the_run_starts_or_the_bench_is_cleared() =>
        Sequences.Sample(lines =>
        {
            var bench = Workshop().SignedIn();
            foreach (var line in lines)
            {
                var before = bench.Session.LoadParts;
                var orders = bench.Orders.Count;
                bench.Type(line);
                var mayGo = line == "CLEAR" || bench.Orders.Skip(orders).OfType<StationCommand.StartLoad>().Any();
                if (!mayGo && !before.SequenceEqual(bench.Session.LoadParts.Take(before.Count)))
                    return false;
                if (bench.Session.LoadParts.Distinct().Count() != bench.Session.LoadParts.Count)
                    return false;
            }
            return true;
        });

    [Fact]
    public void A_started_run_names_every_part_that_was_collected() =>
        Sequences.Sample(lines =>
        {
            var bench = Workshop().SignedIn();
            foreach (var line in lines)
            {
                var (before, orders) = (bench.Session.LoadParts, bench.Orders.Count);
                bench.Type(line);
                if (
                    before.Count > 0
                    && bench.Orders.Skip(orders).OfType<StationCommand.StartLoad>().Any(load => !load.Parts.SequenceEqual(before))
                )
                    return false;
            }
            return true;
        });

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
    public void Another_badge_takes_over_only_after_its_pin()
    {
        var bench = Workshop().SignedIn();
        bench.Scan(CodeKind.Part, "C26-00001");

        bench.Scan(CodeKind.Badge, "BUILD2");
        Assert.Equal("BUILD1", bench.Session.Badge);
        bench.Type("NO");
        Assert.Equal(("BUILD1", "C26-00001", Question.None), (bench.Session.Badge, bench.Session.Part, bench.Session.Asks));
        bench.Scan(CodeKind.Badge, "BUILD2");
        bench.Type(UnlikelyPin);
        Assert.Equal(("BUILD2", null), (bench.Session.Badge, bench.Session.Part));
    }

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
