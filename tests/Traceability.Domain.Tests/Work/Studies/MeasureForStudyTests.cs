using Traceability.Domain.Quality.GaugeStudy;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Domain.Work.Studies;

namespace Traceability.Domain.Tests.Work.Studies;

public class MeasureForStudyTests
{
    private static readonly DateTimeOffset Then = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);

    private static readonly MeasurementStudy Good = new(
        Guid.NewGuid(),
        "S-1",
        "Tension by three people",
        "resonanceHz",
        "Hz",
        "resonance-bench",
        ["P1", "P2"],
        ["A", "B"],
        2,
        880,
        920,
        Guid.Empty,
        Then,
        Then
    );

    private static readonly Instrument RightBench = Something.Instrument("resonance-bench", new(2026, 1, 1), new(2027, 1, 1)).Instrument;

    private static string[] Names(int count, int length = 2) => [.. Enumerable.Range(0, count).Select(i => $"{i}".PadLeft(length, 'x'))];

    private static void IsAccepted(MeasurementStudy design) =>
        Assert.Equal([design], MeasureForStudy.Design(design) is { Refusal: null } d ? d.Facts : []);

    private static void IsRefusedAt(string field, MeasurementStudy design) =>
        Assert.Equal([field], MeasureForStudy.Design(design).IsRefused(RefusalKind.Invalid).Errors.Keys);

    private static MeasurementStudyReading Value(string piece, string person, int trial, decimal value, int minute = 0) =>
        new(
            Guid.NewGuid(),
            Good.Id,
            piece,
            person,
            trial,
            value,
            Numbers.Text(value),
            null,
            null,
            Guid.Empty,
            Then,
            Then.AddMinutes(minute)
        );

    private static StudyView Full =>
        new(Good, [.. new StudyView(Good, []).Cells.Select((c, i) => Value(c.Piece, c.Person, c.Trial, 900 + i))]);

    private static Decision<MeasurementStudyReading> Take(
        StudyView view,
        StudyCell cell,
        string digits = "901",
        Instrument? instrument = null,
        string? reason = null
    ) => MeasureForStudy.Take(view, cell, Entered(digits), instrument, reason, new Bench().Stamp(Somebody.Builder));

    private static EnteredDecimal Entered(string digits) =>
        EnteredDecimal.TryParseReading(digits, out var number, out var problem) ? number : throw new ArgumentException(problem);

    [Fact]
    public void A_good_design_is_taken_as_it_stands() => IsAccepted(Good);

    [Fact]
    public void A_design_says_what_is_measured_in_what_and_with_what()
    {
        IsRefusedAt("title", Good with { Title = " " });
        IsRefusedAt("characteristic", Good with { Characteristic = "" });
        IsRefusedAt("instrumentKind", Good with { InstrumentKind = " " });
        IsRefusedAt("unit", Good with { Unit = "Hertz" });
    }

    [Fact]
    public void A_design_has_two_to_fifty_pieces_and_two_to_twenty_people()
    {
        IsAccepted(Good with { Pieces = Names(50), People = Names(20) });
        IsRefusedAt("parts", Good with { Pieces = Names(51) });
        IsRefusedAt("parts", Good with { Pieces = Names(1) });
        IsRefusedAt("people", Good with { People = Names(21) });
        IsRefusedAt("people", Good with { People = Names(1) });
    }

    [Fact]
    public void Pieces_and_people_have_a_name_of_at_most_sixty_letters_each_and_are_named_once()
    {
        IsAccepted(Good with { Pieces = Names(2, 60) });
        IsRefusedAt("parts", Good with { Pieces = Names(2, 61) });
        IsRefusedAt("parts", Good with { Pieces = ["P1", " "] });
        IsRefusedAt("people", Good with { People = ["A", "B", "A"] });
        IsAccepted(Good with { People = ["A", "a"] });
    }

    [Theory]
    [InlineData(1, false)]
    [InlineData(2, true)]
    [InlineData(10, true)]
    [InlineData(11, false)]
    public void Each_piece_is_measured_two_to_ten_times(int repeats, bool good)
    {
        if (good)
            IsAccepted(Good with { Repeats = repeats });
        else
            IsRefusedAt("repeats", Good with { Repeats = repeats });
    }

    [Fact]
    public void The_upper_limit_lies_above_the_lower_where_both_are_given()
    {
        IsRefusedAt("upper", Good with { Lower = 900, Upper = 900 });
        IsAccepted(Good with { Lower = 900, Upper = 900.1m });
        IsAccepted(Good with { Lower = null, Upper = null });
        IsAccepted(Good with { Lower = 900, Upper = null });
    }

    [Fact]
    public void Cells_come_in_the_order_of_measuring_and_those_filled_are_not_missing()
    {
        var view = new StudyView(Good, [Value("P2", "A", 1, 900)]);

        Assert.Equal(
            [("P1", "A", 1), ("P1", "B", 1), ("P2", "B", 1), ("P1", "A", 2), ("P2", "A", 2), ("P1", "B", 2), ("P2", "B", 2)],
            view.Missing.Select(c => (c.Piece, c.Person, c.Trial))
        );
    }

    [Fact]
    public void The_latest_reading_of_a_cell_counts_whatever_the_order_in_which_they_stand()
    {
        var view = new StudyView(Good, [Value("P1", "A", 1, 905, minute: 2), Value("P1", "A", 1, 901, minute: 1)]);

        Assert.Equal(905, Assert.Single(view.Counting).Value.Value);
    }

    [Fact]
    public void There_is_no_result_until_every_cell_is_filled()
    {
        var almost = Full with { Readings = [.. Full.Readings.Skip(1)] };

        Assert.Equal((8, 7), (CrossedGaugeStudy.Of(almost).Missing!.Needed, CrossedGaugeStudy.Of(almost).Missing!.Found));
        Assert.True(CrossedGaugeStudy.Of(Full).IsKnown);
    }

    [Fact]
    public void A_reading_belongs_to_a_piece_a_person_and_a_repeat_of_the_study()
    {
        var view = new StudyView(Good, []);

        Assert.Equal(["part"], Take(view, new("P9", "A", 1)).IsRefused(RefusalKind.Invalid, "P1, P2").Errors.Keys);
        Assert.Equal(["person"], Take(view, new("P1", "C", 1)).IsRefused(RefusalKind.Invalid, "A, B").Errors.Keys);
        Assert.Equal(["trial"], Take(view, new("P1", "A", 0)).IsRefused(RefusalKind.Invalid).Errors.Keys);
        Assert.Equal(["trial"], Take(view, new("P1", "A", 3)).IsRefused(RefusalKind.Invalid).Errors.Keys);
        Take(view, new("P1", "A", 1)).Accepted();
        Take(view, new("P2", "B", 2)).Accepted();
    }

    [Fact]
    public void A_study_takes_measured_values_of_the_right_instrument_and_no_bounds()
    {
        var view = new StudyView(Good, []);
        var scale = Something.Instrument("scale", new(2026, 1, 1), new(2027, 1, 1)).Instrument;

        Assert.Equal(["value"], Take(view, new("P1", "A", 1), ">400").IsRefused(RefusalKind.Invalid).Errors.Keys);
        Assert.Equal(
            ["instrument"],
            Take(view, new("P1", "A", 1), instrument: scale).IsRefused(RefusalKind.Invalid, "scale-1", "resonance-bench").Errors.Keys
        );
        Assert.Equal(RightBench.Id, Take(view, new("P1", "A", 1), instrument: RightBench).Accepted().InstrumentId);
        Assert.Null(Take(view, new("P1", "A", 1)).Accepted().InstrumentId);
    }

    [Fact]
    public void A_value_that_is_there_already_is_superseded_only_with_a_reason()
    {
        var view = new StudyView(Good, [Value("P1", "A", 1, 901)]);
        StudyCell cell = new("P1", "A", 1);

        Assert.Equal(RefusalCode.DuplicateReading, Take(view, cell).IsRefused(RefusalKind.Conflict, "901").Code);
        Take(view, cell, reason: " ").IsRefused(RefusalKind.Conflict, "901");
        Assert.Equal("misread", Take(view, cell, reason: " misread ").Accepted().Reason);
        Assert.Null(Take(view, new("P2", "A", 1), reason: " ").Accepted().Reason);
    }
}
