using Traceability.Domain.Codes;
using Traceability.Domain.Scanning;
using static Traceability.Domain.Tests.Scanning.BenchStages;

namespace Traceability.Domain.Tests.Scanning;

/// <summary>Measuring, line by line: what is typed, how it is answered. All parts, lots and numbers are invented.</summary>
public class MeasureWalkTests
{
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
}
