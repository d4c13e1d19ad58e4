using Traceability.Domain.Scanning;

namespace Traceability.Domain.Tests.Scanning;

/// <summary>
/// What a scan answers differs as soon as anything has changed that decides what it would lead to. All parts are invented.
/// </summary>
public class AwaitedTests
{
    private static readonly StageNeeds Measuring = new("C26-00001", "capacitance", "Capacitance", GateSign.Open, "Under way.")
    {
        AttemptId = WalkThrough.IdOf("attempt"),
        Slots = [new("front", "Front", null, "diaphragm")],
        Characteristics = [new("frontPf", "Front", "pF", 60m, 80m), new("rearPf", "Rear", "pF", 60m, 80m)],
        Evidence = ["photo of the stack"],
    };

    private static readonly StationSession Bench = new()
    {
        Badge = "BUILD1",
        Station = "BENCH-1",
        Part = "C26-00001",
        AttemptId = Measuring.AttemptId,
    };

    public static TheoryData<string> Changes => [.. Changed.Keys];

    private static Dictionary<string, (StationSession Session, StageNeeds Needs)> Changed =>
        new()
        {
            ["another part"] = (Bench with { Part = "C26-00002" }, Measuring with { Part = "C26-00002" }),
            ["another attempt"] = (Bench, Measuring with { AttemptId = WalkThrough.IdOf("another") }),
            ["no attempt"] = (Bench, Measuring with { AttemptId = null }),
            ["a value taken"] = (
                Bench,
                Measuring with
                {
                    Characteristics = [Measuring.Characteristics[1]],
                    Taken = [new(WalkThrough.IdOf("r"), Measuring.Characteristics[0], "70")],
                }
            ),
            ["a slot filled"] = (Bench, Measuring with { Slots = [] }),
            ["the last file sent"] = (Bench, Measuring with { Evidence = [] }),
            ["another value chosen"] = (Bench with { ChosenCharacteristic = "rearPf" }, Measuring),
            ["a question asked"] = (Bench with { Asks = Question.AbandonReason }, Measuring),
            ["another person"] = (Bench with { Badge = "BUILD2" }, Measuring),
            ["another station"] = (Bench with { Station = "BENCH-2" }, Measuring),
            ["another instrument"] = (Bench with { Instruments = [new("LCR-1", "lcr-meter")] }, Measuring),
            ["a part collected"] = (Bench with { LoadParts = ["C26-00001", "C26-00002"] }, Measuring),
        };

    [Theory]
    [MemberData(nameof(Changes))]
    public void What_changes_the_meaning_of_a_scan_changes_what_it_answers(string change)
    {
        var (session, needs) = Changed[change];
        Assert.NotEqual(Awaited.Of(Bench, Measuring), Awaited.Of(session, needs));
    }

    [Fact]
    public void Time_and_what_was_said_change_nothing()
    {
        var later = Measuring with { Gate = GateSign.Waiting, GateWords = "Opens at 14:20.", Bar = new(GateSign.Waiting, "14:20") };
        Assert.Equal(Awaited.Of(Bench, Measuring), Awaited.Of(Bench with { Last = new(Severity.Ok, "Open.") }, later));
    }

    [Fact]
    public void What_the_facts_say_is_open_counts_on_both_sides() =>
        Assert.Equal(Awaited.Of(Bench, Measuring), Awaited.Of(Bench with { AttemptId = null }, Measuring));

    [Fact]
    public void A_window_left_behind_is_told_so_and_what_is_asked_now()
    {
        var step = StationDesk.Behind(Bench, Measuring);

        Assert.Equal(
            new(
                Severity.Refused,
                "Not taken: this window showed something older.",
                "Nothing was recorded. As it is now: C26-00001: Capacitance - Front: scan a diaphragm. Scan or type again what still holds."
            ),
            step.Prompt
        );
        Assert.IsType<StationCommand.Nothing>(step.Command);
    }

    [Fact]
    public void What_is_asked_now_is_the_question_that_stands()
    {
        var taken = Measuring with { Taken = [new(WalkThrough.IdOf("r"), Measuring.Characteristics[0], "700")] };
        Assert.Equal("Type your PIN.", StationDesk.Now(Bench.Lapsed(), Measuring).Line);
        Assert.StartsWith(
            "Type in words why",
            StationDesk.Now(Bench with { Asks = Question.AbandonReason }, Measuring).Line,
            StringComparison.Ordinal
        );
        Assert.Equal(
            "Front was taken as 700 pF: type what it should be (60 to 80 pF).",
            StationDesk.Now(Bench with { Asks = Question.CorrectValue, Correcting = new(WalkThrough.IdOf("r")) }, taken).Line
        );
        Assert.StartsWith(
            "Front: 70 pF in place of 700 pF.",
            StationDesk.Now(Bench with { Asks = Question.CorrectReason, Correcting = new(WalkThrough.IdOf("r"), "70") }, taken).Line,
            StringComparison.Ordinal
        );
        Assert.Equal("Front: scan a diaphragm.", StationDesk.Now(Bench, Measuring).Line);
    }
}
