using Traceability.Domain.Codes;
using Traceability.Domain.Scanning;

namespace Traceability.Domain.Tests.Scanning;

/// <summary>Whole stages, line by line: what is typed, how it is answered. All parts, lots and numbers are invented.</summary>
public class StationWalkTests
{
    private static readonly StageNeeds Stack = new("C26-00001", "stack", "Clean and stack", GateSign.Open, "Open.")
    {
        Slots =
        [
            new("front-diaphragm", "Front diaphragm", null, "diaphragm"),
            new("rear-diaphragm", "Rear diaphragm", null, "diaphragm"),
            new("spacer", "Spacer ring", "spacer", null),
            new("fabric", "Resistive fabric", "fabric", null, IsRequired: false),
        ],
    };

    private static readonly StageNeeds Tune = new("D26-00017", "tune", "Fine tune", GateSign.Open, "Open.")
    {
        InstrumentKinds = ["resonance-bench", "caliper"],
        Characteristics =
        [
            new("resonanceHz", "Resonance", "Hz", 880m, 920m),
            new("spreadHz", "Spread over the film", "Hz", null, 15m),
            new("roomTemperatureC", "Room temperature", "degC", null, null),
        ],
    };

    private static StageNeeds Cure(string serial) =>
        new(serial, "cure", "Cure on the plate", GateSign.Open, "Open.") { MayRunAsLoad = true };

    private static StageNeeds Bond(string serial) => new(serial, "bond", "Bond the ring", GateSign.Open, "Open.");

    private static string B(CodeKind kind, string id) => PrintedCode.For(kind, id).Text;

    private static void Walk(WalkThrough bench, params (string Typed, Severity Severity, string Says)[] lines)
    {
        foreach (var (typed, severity, says) in lines)
        {
            var prompt = bench.Type(typed);
            Assert.True(
                prompt.Severity == severity && prompt.Line.Contains(says, StringComparison.Ordinal),
                $"\"{typed}\" was answered {prompt.Severity}: {prompt.Line} ({prompt.Detail}); expected {severity}: {says}"
            );
        }
    }

    [Fact]
    public void Measuring_a_diaphragm_needs_scans_numbers_and_enter_only()
    {
        var bench = new WalkThrough(Tune)
            .KnowingParts("diaphragm", "D26-00017")
            .Knowing(new Scan.Instrument("RB-1", "resonance-bench"), "RB-1")
            .Knowing(new Scan.Instrument("CAL-2", "caliper"), "CAL-2")
            .Knowing(new Scan.Part("D26-00017", "diaphragm"), "JIG-4");

        Walk(
            bench,
            ("912", Severity.Refused, "Scan your badge first."),
            (B(CodeKind.Badge, "BUILD1"), Severity.Ask, "Type your PIN."),
            ("2222", Severity.Refused, "That PIN is not right."),
            ("1111", Severity.Ask, "Scan the station"),
            (B(CodeKind.Station, "BENCH-1"), Severity.Ask, "Scan a part"),
            ("912", Severity.Refused, "scan the part first"),
            (B(CodeKind.Carrier, "JIG-4"), Severity.Ask, "Scan resonance-bench and caliper."),
            ("START", Severity.Refused, "Scan resonance-bench and caliper."),
            ("912", Severity.Refused, "scan START first"),
            (B(CodeKind.Instrument, "RB-1"), Severity.Ask, "Scan caliper."),
            ("cal-2", Severity.Ok, "Scan START."),
            (B(CodeKind.Action, "START"), Severity.Ask, "Resonance: type Hz (880 to 920 Hz)."),
            ("12.5 mV", Severity.Refused, "without a unit"),
            ("880", Severity.Ok, "Resonance 880 Hz: inside (880 to 920 Hz). Spread over the film: type Hz (at most 15 Hz)."),
            ("DONE", Severity.Refused, "Not yet. Spread over the film"),
            ("15,01", Severity.Outside, "Spread over the film 15.01 Hz: OUTSIDE (at most 15 Hz). Room temperature"),
            (
                "21.50",
                Severity.Ok,
                "Room temperature 21.50 °C: kept. Spread over the film is outside: scan CORRECT if it was mistyped, DONE if it is so."
            ),
            ("7", Severity.Refused, "the number was not kept"),
            ("done", Severity.Ok, "Passed.")
        );

        Assert.Equal(
            [("resonanceHz", "880"), ("spreadHz", "15.01"), ("roomTemperatureC", "21.50")],
            bench.Orders.OfType<StationCommand.RecordReading>().Select(reading => (reading.Characteristic, reading.Value.Digits))
        );
        Assert.Equal(["RB-1", "CAL-2"], Assert.Single(bench.Orders.OfType<StationCommand.OpenAttempt>()).Instruments);
        Assert.Single(bench.Orders.OfType<StationCommand.CloseAttempt>());
        Assert.Null(bench.Session.AttemptId);
    }

    [Fact]
    public void Stacking_a_capsule_fills_the_first_slot_that_takes_what_is_scanned()
    {
        var bench = new WalkThrough(Stack)
            .KnowingParts("diaphragm", "D26-00001", "D26-00002")
            .KnowingParts("board", "B26-00001")
            .KnowingLots("spacer", "SP-7")
            .KnowingLots("fabric", "FA-1")
            .KnowingLots("adhesive", "GL-9")
            .SignedIn();

        Walk(
            bench,
            (B(CodeKind.Part, "C26-00001"), Severity.Ok, "Scan START."),
            (B(CodeKind.Lot, "SP-7"), Severity.Refused, "scan START first"),
            ("START", Severity.Ask, "Front diaphragm: scan a diaphragm."),
            (B(CodeKind.Lot, "SP-7"), Severity.Ok, "Front diaphragm: scan a diaphragm."),
            (B(CodeKind.Lot, "GL-9"), Severity.Refused, "No empty slot here takes an adhesive lot."),
            (B(CodeKind.Part, "B26-00001"), Severity.Refused, "No empty slot here takes a board."),
            ("D26-00001", Severity.Ok, "Rear diaphragm: scan a diaphragm."),
            (B(CodeKind.Lot, "SP-7"), Severity.Refused, "No empty slot here takes a spacer lot."),
            ("DONE", Severity.Refused, "Not yet."),
            (B(CodeKind.Part, "D26-00002"), Severity.Ok, "Nothing is missing. Scan DONE."),
            (B(CodeKind.Lot, "FA-1"), Severity.Ok, "Nothing is missing. Scan DONE."),
            ("DONE", Severity.Ok, "Passed.")
        );

        Assert.Equal(
            [
                ("spacer", null, "SP-7"),
                ("front-diaphragm", "D26-00001", null),
                ("rear-diaphragm", "D26-00002", null),
                ("fabric", null, "FA-1"),
            ],
            bench.Orders.OfType<StationCommand.Fit>().Select(fit => (fit.Position, fit.Child, fit.Lot))
        );
    }

    [Fact]
    public void A_position_code_its_name_and_next_and_back_choose_another_slot()
    {
        var bench = new WalkThrough(Stack)
            .KnowingParts("diaphragm", "D26-00001", "D26-00002", "D26-00003")
            .KnowingLots("spacer", "SP-7")
            .SignedIn();

        Walk(
            bench,
            (B(CodeKind.Part, "C26-00001"), Severity.Ok, "START"),
            ("START", Severity.Ask, "Front diaphragm"),
            (B(CodeKind.Position, "rear-diaphragm"), Severity.Ask, "Rear diaphragm: scan a diaphragm."),
            (B(CodeKind.Lot, "SP-7"), Severity.Refused, "Rear diaphragm takes a diaphragm, not a spacer lot."),
            ("D26-00001", Severity.Ok, "Front diaphragm"),
            (B(CodeKind.Position, "rear-diaphragm"), Severity.Refused, "not a slot of this stage"),
            ("next", Severity.Ask, "Spacer ring: scan a spacer lot."),
            ("next", Severity.Ask, "Resistive fabric"),
            ("next", Severity.Ask, "Front diaphragm"),
            ("back", Severity.Ask, "Resistive fabric"),
            ("no", Severity.Ask, "Front diaphragm"),
            ("spacer", Severity.Ask, "Spacer ring"),
            ("fit", Severity.Ask, "Front diaphragm")
        );

        Assert.Equal([("rear-diaphragm", "D26-00001")], bench.Orders.OfType<StationCommand.Fit>().Select(fit => (fit.Position, fit.Child)));
    }

    [Fact]
    public void Values_that_the_stage_can_be_closed_without_are_asked_for_last_and_keep_nothing_open()
    {
        var bench = new WalkThrough(
            Tune with
            {
                InstrumentKinds = [],
                Characteristics =
                [
                    Tune.Characteristics[1] with
                    {
                        IsRequired = false,
                    },
                    Tune.Characteristics[0],
                    Tune.Characteristics[2] with
                    {
                        IsRequired = false,
                    },
                ],
            }
        ).SignedIn();

        Walk(
            bench,
            (B(CodeKind.Part, "D26-00017"), Severity.Ok, "START"),
            ("START", Severity.Ask, "Resonance: type Hz"),
            ("DONE", Severity.Refused, "Not yet. Resonance"),
            ("900", Severity.Ok, "Nothing is missing. Scan DONE. Not required: Spread over the film (at most 15 Hz)."),
            ("next", Severity.Ask, "Room temperature: type °C"),
            ("no", Severity.Ask, "Nothing is missing. Scan DONE."),
            ("3", Severity.Ok, "Spread over the film 3 Hz: inside"),
            ("DONE", Severity.Ok, "Passed.")
        );
        Assert.Equal(
            ["resonanceHz", "spreadHz"],
            bench.Orders.OfType<StationCommand.RecordReading>().Select(reading => reading.Characteristic)
        );
    }

    [Theory]
    [InlineData(
        GateSign.Waiting,
        "14:20, in 40 min",
        Severity.Wait,
        "Nothing is missing. It lasts until 14:20, in 40 min: scan DONE then."
    )]
    [InlineData(GateSign.Blocked, "Film lot F-7 is on hold.", Severity.Ask, "Film lot F-7 is on hold.")]
    public void Where_closing_would_be_refused_the_station_says_why_and_not_DONE(
        GateSign sign,
        string words,
        Severity severity,
        string line
    )
    {
        var under = Tune with { AttemptId = WalkThrough.IdOf("a"), Characteristics = [], Bar = new(sign, words) };
        var bench = new WalkThrough(under).SignedIn();

        Walk(bench, (B(CodeKind.Part, "D26-00017"), severity, line));
        Assert.Equal(line, bench.Last.Line);
    }

    [Fact]
    public void A_characteristic_may_be_entered_out_of_turn()
    {
        var bench = new WalkThrough(Tune with { InstrumentKinds = [] }).SignedIn();

        Walk(
            bench,
            (B(CodeKind.Part, "D26-00017"), Severity.Ok, "START"),
            ("START", Severity.Ask, "Resonance"),
            ("roomTemperatureC", Severity.Ask, "Room temperature: type °C (no limits)."),
            ("21", Severity.Ok, "Room temperature 21 °C: kept. Resonance"),
            ("next", Severity.Ask, "Spread"),
            ("15", Severity.Ok, "Spread over the film 15 Hz: inside")
        );
    }

    [Fact]
    public void A_run_for_many_parts_is_scan_scan_scan_start()
    {
        var bench = new WalkThrough(Cure("D26-00001"), Cure("D26-00002"), Cure("D26-00003")).SignedIn(station: "PLATE-1");

        Walk(
            bench,
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "Scan START, or more parts for the same run."),
            (B(CodeKind.Part, "D26-00002"), Severity.Ok, "2 collected."),
            (B(CodeKind.Part, "D26-00003"), Severity.Ok, "3 collected."),
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "collected already; 3 in all"),
            ("START", Severity.Ok, "The run is started for 3 parts."),
            (B(CodeKind.Part, "D26-00002"), Severity.Ask, "Scan LOAD-CLOSE"),
            ("CLEAR", Severity.Ask, "The bench is clear."),
            (B(CodeKind.Part, "D26-00003"), Severity.Ask, "Scan LOAD-CLOSE"),
            ("LOAD-CLOSE", Severity.Ok, "Passed.")
        );

        var load = Assert.Single(bench.Orders.OfType<StationCommand.StartLoad>());
        Assert.Equal(("cure", "PLATE-1"), (load.StageCode, load.Station));
        Assert.Equal(["D26-00001", "D26-00002", "D26-00003"], load.Parts);
        Assert.Single(bench.Orders.OfType<StationCommand.CloseLoad>());
    }

    [Fact]
    public void A_row_of_parts_is_bonded_one_by_one_although_a_cure_for_many_comes_next()
    {
        var bench = new WalkThrough(Bond("D26-00001"), Bond("D26-00002"), Bond("D26-00003"))
        {
            Refusing = command =>
                command is StationCommand.AddToLoad add
                    ? new ScanOutcome.LoadPartRefused(add.Serial, $"{add.Serial} is at another stage: Bond the ring.")
                    : null,
        }.SignedIn();
        foreach (var serial in new[] { "D26-00001", "D26-00002", "D26-00003" })
            bench.Then[serial] = Cure(serial);

        Walk(
            bench,
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "Scan START."),
            ("START", Severity.Ask, "Scan DONE."),
            ("DONE", Severity.Ok, "Passed."),
            (B(CodeKind.Part, "D26-00002"), Severity.Ok, "Scan START."),
            ("START", Severity.Ask, "Scan DONE."),
            ("DONE", Severity.Ok, "Passed."),
            (B(CodeKind.Part, "D26-00003"), Severity.Ok, "Scan START."),
            ("START", Severity.Ask, "Scan DONE."),
            ("DONE", Severity.Ok, "Passed.")
        );

        Assert.Equal(["D26-00001", "D26-00002", "D26-00003"], bench.Orders.OfType<StationCommand.OpenAttempt>().Select(open => open.Part));
        Assert.Empty(bench.Session.LoadParts);
    }

    [Fact]
    public void After_the_row_the_parts_are_collected_for_the_cure_by_scanning_them()
    {
        var bench = new WalkThrough(Cure("D26-00001"), Cure("D26-00002"), Bond("D26-00003")).SignedIn();
        bench.Then["D26-00003"] = Cure("D26-00003");

        Walk(
            bench,
            (B(CodeKind.Part, "D26-00003"), Severity.Ok, "START"),
            ("START", Severity.Ask, "DONE"),
            ("DONE", Severity.Ok, "Passed."),
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "more parts for the same run"),
            (B(CodeKind.Part, "D26-00002"), Severity.Ok, "2 collected."),
            (B(CodeKind.Part, "D26-00003"), Severity.Ok, "3 collected."),
            ("START", Severity.Ok, "The run is started for 3 parts.")
        );
    }

    [Fact]
    public void The_part_just_closed_starts_a_row_of_its_own_once_it_is_scanned_again()
    {
        var bench = new WalkThrough(Bond("D26-00001"), Cure("D26-00002")).SignedIn();
        bench.Then["D26-00001"] = Cure("D26-00001");

        Walk(
            bench,
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "START"),
            ("START", Severity.Ask, "DONE"),
            ("DONE", Severity.Ok, "Passed."),
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "more parts for the same run"),
            (B(CodeKind.Part, "D26-00002"), Severity.Ok, "2 collected.")
        );
    }

    [Fact]
    public void A_part_that_was_put_aside_is_turned_to_by_the_word_that_the_station_names()
    {
        var bench = new WalkThrough(Cure("D26-00001"), Cure("D26-00002"), Bond("D26-00003"))
        {
            Refusing = command =>
                command is StationCommand.AddToLoad { Serial: "D26-00003" } add
                    ? new ScanOutcome.LoadPartRefused(add.Serial, "D26-00003 is at another stage: Bond the ring.")
                    : null,
        }.SignedIn();

        Walk(
            bench,
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "START"),
            (B(CodeKind.Part, "D26-00002"), Severity.Ok, "2 collected."),
            (B(CodeKind.Part, "D26-00003"), Severity.Refused, "another stage")
        );
        Assert.Contains("CLEAR", bench.Last.Detail, StringComparison.Ordinal);
        Walk(bench, ("CLEAR", Severity.Ask, "clear"), (B(CodeKind.Part, "D26-00003"), Severity.Ok, "Scan START."));
    }

    [Fact]
    public void DONE_takes_one_part_out_of_its_run_and_LOAD_CLOSE_ends_the_run_for_the_others()
    {
        var bench = new WalkThrough(Cure("D26-00001"), Cure("D26-00002")).SignedIn(station: "PLATE-1");

        Walk(
            bench,
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "Scan START, or more parts for the same run."),
            (B(CodeKind.Part, "D26-00002"), Severity.Ok, "2 collected."),
            ("START", Severity.Ok, "The run is started for 2 parts."),
            (B(CodeKind.Part, "D26-00001"), Severity.Ask, "or DONE to take this one out"),
            ("DONE", Severity.Ok, "Passed."),
            (B(CodeKind.Part, "D26-00002"), Severity.Ask, "Scan LOAD-CLOSE"),
            ("LOAD-CLOSE", Severity.Ok, "Passed.")
        );

        Assert.Equal(WalkThrough.IdOf("D26-00001"), Assert.Single(bench.Orders.OfType<StationCommand.CloseAttempt>()).AttemptId);
        Assert.Single(bench.Orders.OfType<StationCommand.CloseLoad>());
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

    [Fact]
    public void A_child_scanned_twice_does_not_push_the_attempt_aside()
    {
        var bench = new WalkThrough(Stack).KnowingParts("diaphragm", "D26-00001", "D26-00002", "D26-00003").SignedIn();

        Walk(
            bench,
            (B(CodeKind.Part, "C26-00001"), Severity.Ok, "START"),
            ("START", Severity.Ask, "Front diaphragm"),
            ("D26-00001", Severity.Ok, "Rear diaphragm"),
            ("D26-00002", Severity.Ok, "Spacer"),
            ("D26-00002", Severity.Refused, "No empty slot here takes a diaphragm.")
        );
        Assert.Equal("C26-00001", bench.Session.Part);
    }

    [Fact]
    public void A_part_that_cannot_join_a_load_is_put_aside_and_the_others_stay()
    {
        var bench = new WalkThrough(Cure("D26-00001"), Cure("D26-00002"), Cure("D26-00003"))
        {
            Refusing = command =>
                command is StationCommand.AddToLoad { Serial: "D26-00002" } add
                    ? new ScanOutcome.LoadPartRefused(add.Serial, "D26-00002 is on hold.")
                    : null,
        }.SignedIn();

        Walk(
            bench,
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "START"),
            (B(CodeKind.Part, "D26-00002"), Severity.Refused, "D26-00002 is on hold."),
            (B(CodeKind.Part, "D26-00003"), Severity.Ok, "2 collected.")
        );

        Assert.Equal(["D26-00001", "D26-00003"], bench.Session.LoadParts);
    }

    [Fact]
    public void A_load_survives_signing_out_and_can_be_started_by_the_next_person()
    {
        var bench = new WalkThrough(Cure("D26-00001"), Cure("D26-00002")).SignedIn();

        Walk(
            bench,
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "START"),
            (B(CodeKind.Part, "D26-00002"), Severity.Ok, "2 collected."),
            ("OUT", Severity.Ok, "Signed out."),
            (B(CodeKind.Badge, "BUILD2"), Severity.Ask, "PIN"),
            ("1111", Severity.Ok, "2 collected."),
            ("START", Severity.Ok, "2 collected."),
            ("START", Severity.Ok, "The run is started for 2 parts.")
        );
    }

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
    public void Giving_up_asks_for_a_reason_in_words()
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
            ("film torn at screw 3", Severity.Ok, "given up")
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
            (typed, Severity.Ok, "given up")
        );
        Assert.Equal(reason, Assert.Single(bench.Orders.OfType<StationCommand.Abandon>()).Reason);
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
}
