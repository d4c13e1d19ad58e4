using Traceability.Domain.Codes;
using Traceability.Domain.Scanning;

namespace Traceability.Domain.Tests.Scanning;

/// <summary>A wrong value put right at the bench. All parts and numbers are invented.</summary>
public class StationCorrectionTests
{
    private static readonly StageNeeds Tune = new("D26-00017", "tune", "Fine tune", GateSign.Open, "Open.")
    {
        Characteristics =
        [
            new("resonanceHz", "Resonance", "Hz", 880m, 920m),
            new("roomTemperatureC", "Room temperature", "degC", 18m, 26m),
            new("roomHumidityPct", "Room humidity", "pct", 30m, 60m),
        ],
    };

    private static WalkThrough Started(params string[] numbers)
    {
        var bench = new WalkThrough(Tune).KnowingParts("diaphragm", "D26-00017").SignedIn();
        foreach (var line in new[] { PrintedCode.For(CodeKind.Part, "D26-00017").Text, "START" }.Concat(numbers))
            bench.Type(line);
        return bench;
    }

    private static void Answers(WalkThrough bench, string typed, Severity severity, string says)
    {
        var prompt = bench.Type(typed);
        Assert.True(
            prompt.Severity == severity && prompt.Line.Contains(says, StringComparison.Ordinal),
            $"\"{typed}\" was answered {prompt.Severity}: {prompt.Line} ({prompt.Detail})"
        );
    }

    [Fact]
    public void The_value_just_taken_is_put_right_with_a_number_and_a_reason()
    {
        var bench = Started("9110");
        Answers(bench, "CORRECT", Severity.Ask, "Resonance was taken as 9110 Hz: type what it should be (880 to 920 Hz).");
        Answers(bench, "911.0", Severity.Ask, "911.0 Hz in place of 9110 Hz");
        Answers(bench, "slipped on the key", Severity.Ok, "Resonance: 911.0 Hz counts now. Room temperature");
        Assert.Equal(new StationCommand.CorrectReading(WalkThrough.IdOf("resonanceHz"), "911.0", "slipped on the key"), bench.Orders[^1]);
    }

    [Fact]
    public void The_reason_most_asked_for_is_scanned_from_the_sheet()
    {
        var bench = Started("9110");
        bench.Type("CORRECT");
        bench.Type("911");
        Answers(bench, "MISTYPED", Severity.Ok, "counts now");
        Assert.Equal("mistyped at the station", Assert.IsType<StationCommand.CorrectReading>(bench.Orders[^1]).Reason);
    }

    [Fact]
    public void Next_back_and_names_turn_to_another_value()
    {
        var bench = Started("900", "45", "22");
        Answers(bench, "CORRECT", Severity.Ask, "Room humidity was taken as 22");
        Answers(bench, "BACK", Severity.Ask, "Room temperature was taken as 45");
        Answers(bench, "BACK", Severity.Ask, "Resonance was taken as 900");
        Answers(bench, "BACK", Severity.Ask, "Room humidity was taken as 22");
        Answers(bench, "NEXT", Severity.Ask, "Resonance was taken as 900");
        Answers(bench, "roomTemperatureC", Severity.Ask, "Room temperature was taken as 45");
        Answers(bench, "roomWhat", Severity.Refused, "neither a number nor a value taken here");
        bench.Type("22");
        bench.Type("MISTYPED");
        Assert.Equal(WalkThrough.IdOf("roomTemperatureC"), Assert.IsType<StationCommand.CorrectReading>(bench.Orders[^1]).ReadingId);
    }

    [Fact]
    public void No_leaves_everything_as_it_is_at_both_questions()
    {
        var bench = Started("9110");
        var orders = bench.Orders.Count;
        bench.Type("CORRECT");
        Answers(bench, "NO", Severity.Ask, "Room temperature: type");
        bench.Type("CORRECT");
        bench.Type("911");
        Answers(bench, "NO", Severity.Ask, "Room temperature: type");
        Assert.Equal(orders, bench.Orders.Count);
        Assert.Null(bench.Session.Correcting);
    }

    [Fact]
    public void Nothing_taken_or_nothing_started_is_said()
    {
        Answers(Started(), "CORRECT", Severity.Refused, "No value was taken here yet");
        Answers(new WalkThrough(Tune).SignedIn(), "CORRECT", Severity.Refused, "Nothing is started here.");
        Answers(Started("900"), "MISTYPED", Severity.Refused, "scan CORRECT first");
    }

    [Fact]
    public void A_scan_that_is_no_answer_is_refused_and_the_question_stands()
    {
        var bench = Started("9110");
        bench.Type("CORRECT");
        Answers(bench, PrintedCode.For(CodeKind.Part, "D26-00018").Text, Severity.Refused, "type what it should be");
        Answers(bench, "1,234", Severity.Refused, "");
        Answers(bench, "911", Severity.Ask, "in place of");
        Answers(bench, "912", Severity.Refused, "911 Hz in place of 9110 Hz");
        Answers(bench, "BACK", Severity.Ask, "was taken as 9110 Hz");
    }

    [Theory]
    [InlineData("CORRECT", "911")]
    [InlineData("CORRECT", "MISTYPED")]
    [InlineData("ABANDON", "film torn")]
    public void A_question_about_an_attempt_that_somebody_else_ended_is_said_to_be_void(string asked, string answer)
    {
        var bench = Started("9110");
        bench.Type(asked);
        if (answer == "MISTYPED")
            bench.Type("911");
        var orders = bench.Orders.Count;

        var over = StationDesk.Take(
            bench.Session,
            ScanParser.Parse(answer),
            Tune with
            {
                StageCode = "bond",
                StageTitle = "Bond the ring",
            }
        );
        var another = StationDesk.Take(
            bench.Session,
            ScanParser.Parse(answer),
            Tune with
            {
                AttemptId = WalkThrough.IdOf("somebody else's"),
            }
        );

        foreach (var step in new[] { over, another })
        {
            Assert.Equal(Severity.Refused, step.Prompt.Severity);
            Assert.Contains("ended meanwhile", step.Prompt.Line, StringComparison.Ordinal);
            Assert.IsType<StationCommand.Nothing>(step.Command);
            Assert.Equal(Question.None, step.Session.Asks);
        }

        Assert.Equal(orders, bench.Orders.Count);
    }

    [Theory]
    [InlineData("F-2611")]
    [InlineData("FILM-A")]
    public void A_code_is_no_reason_for_a_correction(string typed)
    {
        var bench = Started("9110");
        bench.Type("CORRECT");
        bench.Type("911");
        Answers(bench, typed, Severity.Refused, "in words");
        Assert.DoesNotContain(bench.Orders, order => order is StationCommand.CorrectReading);
    }

    [Fact]
    public void A_session_that_ends_meanwhile_forgets_the_correction()
    {
        var bench = Started("9110");
        bench.Type("CORRECT");
        Assert.Null(bench.Session.Lapsed().Correcting);
    }
}
