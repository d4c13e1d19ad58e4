using System.Text;
using Traceability.Domain.Evidence;
using static Traceability.Domain.Tests.Evidence.EvidenceText;

namespace Traceability.Domain.Tests.Evidence;

/// <summary>What every text table has in common, seen through the response file, whose two columns are the plainest.</summary>
public class DelimitedTextTests
{
    private static readonly MeasuredLevel[] Expected = [new(31.5, -3.25), new(1000, 0), new(8000, 1.5)];

    private static ParsedFile<FrequencyResponse> Read(string text) => FrequencyResponseFile.Read(text.Utf8());

    private static string Only(ParsedFile<FrequencyResponse> file) => Assert.Single(file.Problems).ToString();

    [Theory]
    [InlineData("frequency_hz,level_db\n31.5,-3.25\n1000,0\n8000,1.5\n")]
    [InlineData("frequency_hz,level_db\r\n31.5,-3.25\r\n1000,0\r\n8000,1.5")]
    [InlineData("frequency_hz,level_db\r31.5,-3.25\r1000,0\r8000,1.5\r")]
    [InlineData("\ufefffrequency_hz,level_db\n31.5,-3.25\n1000,0\n8000,1.5\n")]
    [InlineData("frequency_hz;level_db\n31.5;-3.25\n1000;0\n8000;1.5\n")]
    [InlineData("frequency_hz;level_db\n31,5;-3,25\n1000;0\n8000;1,5\n")]
    [InlineData("frequency_hz\tlevel_db\n31,5\t-3,25\n1000\t0\n8000\t1,5\n")]
    [InlineData("\"frequency_hz\",\"level_db\"\n\"31,5\",\"-3,25\"\n\"1000\",\"0\"\n\"8000\",\"1,5\"\n")]
    [InlineData(" Frequency_Hz , LEVEL_DB \n 31.5 , -3.25 \n1000,0\n8000,1.5\n")]
    [InlineData("level_db,frequency_hz\n-3.25,31.5\n0,1000\n1.5,8000\n")]
    [InlineData("# made by hand, with care; see note\n\nfrequency_hz,level_db\n# low\n31.5,-3.25\n\n  # high\n1000,+0\n8000,15e-1\n\n")]
    public void The_same_table_is_read_in_every_way_it_may_be_written(string text) => Assert.Equal(Expected, Read(text).Data?.Points);

    [Fact]
    public void Columns_that_are_not_wanted_are_passed_over_and_named()
    {
        var file = Read("no,frequency_hz,phase_deg,level_db\n1,31.5,10,-3.25\n2,1000,x,0\n3,8000,,1.5\n");

        Assert.Equal(Expected, file.Data?.Points);
        Assert.Equal("Columns not used: no, phase_deg.", Assert.Single(file.Notes));
    }

    [Fact]
    public void A_missing_column_is_named_together_with_what_is_there() =>
        Assert.Equal(
            "Line 1: The heading must name the column level_db; it names frequency_hz | level.",
            Only(Read("frequency_hz,level\n1,2\n"))
        );

    [Fact]
    public void A_table_without_heading_is_refused()
    {
        var file = Read("31.5,-3.25\n1000,0\n");

        Assert.Equal(2, file.Problems.Count);
        Assert.All(file.Problems, problem => Assert.Equal(1, problem.Line));
    }

    [Fact]
    public void A_column_named_twice_is_refused() =>
        Assert.Contains("more than once", Only(Read("frequency_hz,level_db,level_db\n")), StringComparison.Ordinal);

    [Fact]
    public void Decimal_commas_between_commas_are_refused_with_advice() =>
        Assert.Equal(
            "Line 2: 2 columns are named but this line has 4. With decimal commas, the columns must be separated by ; instead of ,.",
            Only(Read("frequency_hz,level_db\n31,5,-3,25\n1000,0\n"))
        );

    [Fact]
    public void A_line_with_too_few_fields_is_refused() =>
        Assert.Equal("Line 3: 2 columns are named but this line has 1.", Only(Read("frequency_hz;level_db\n31,5;-3\n1000\n")));

    [Fact]
    public void Points_and_commas_in_one_file_are_refused() =>
        Assert.Equal("Line 3: level_db is not a plain number: \"-3.5\".", Only(Read("frequency_hz;level_db\n31,5;-3\n1000;-3.5\n")));

    [Theory]
    [InlineData("1.000,5")]
    [InlineData("1,000,000")]
    [InlineData("1 000")]
    [InlineData("1'000")]
    [InlineData("0x10")]
    [InlineData("(5)")]
    [InlineData("5-")]
    public void Thousands_and_other_ornaments_are_refused(string number) =>
        Assert.Contains("is not a plain number", Only(Read($"frequency_hz;level_db\n{number};0\n")), StringComparison.Ordinal);

    [Fact]
    public void Commas_that_may_part_thousands_are_refused() =>
        Assert.Contains(
            "decimals or thousands",
            Only(Read("frequency_hz;level_db\n1,000;0\n2,000;0\n10,000;0\n")),
            StringComparison.Ordinal
        );

    [Fact]
    public void Commas_with_three_decimals_are_taken_where_thousands_could_not_be() =>
        Assert.Equal(new(100, -3.125), Read("frequency_hz;level_db\n100;-3,125\n200;0,000\n400;1,250\n").Data?.Points[0]);

    [Fact]
    public void Text_in_another_encoding_is_told_apart()
    {
        const string Text = "frequency_hz,level_db\n31.5,-3.25\n1000,0\n8000,1.5\n";

        foreach (var encoding in (Encoding[])[Encoding.Unicode, Encoding.BigEndianUnicode])
        {
            foreach (var preamble in (byte[][])[encoding.GetPreamble(), []])
            {
                var file = FrequencyResponseFile.Read((byte[])[.. preamble, .. encoding.GetBytes(Text)]);
                Assert.Equal(FileFault.WrongFormat, Assert.Single(file.Problems).Fault);
            }
        }
    }

    [Fact]
    public void A_message_shows_no_more_of_a_field_than_a_person_can_read()
    {
        var message = Only(
            Read($"frequency_hz,level_db\n{new string('9', 5000)}x,\u0007\n").Problems is [var first, ..]
                ? new ParsedFile<FrequencyResponse>(null, [first], [])
                : null!
        );

        Assert.True(message.Length < 120);
    }

    [Fact]
    public void Too_many_columns_are_refused() =>
        Assert.Contains(
            "more than can be read",
            Only(Read(string.Join(',', Enumerable.Repeat("frequency_hz", 65)))),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_line_number_counts_every_line_of_the_file() =>
        Assert.Equal(
            7,
            Assert.Single(FrequencyResponseFile.Read(Lines("# a", "", "frequency_hz,level_db\r", "1,0", "#", "2,0", "x,0")).Problems).Line
        );
}
