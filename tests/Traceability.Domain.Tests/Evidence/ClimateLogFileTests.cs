using System.Text;
using CsCheck;
using Traceability.Domain.Evidence;
using static Traceability.Domain.Tests.Evidence.EvidenceText;

namespace Traceability.Domain.Tests.Evidence;

public class ClimateLogFileTests
{
    private const string Heading = "time,temperature_c,humidity_pct";

    private static readonly DateTimeOffset Start = new(2026, 11, 25, 14, 20, 0, TimeSpan.Zero);

    private static ParsedFile<ClimateLog> Read(params string[] lines) => ClimateLogFile.Read(Lines(lines));

    [Fact]
    public void A_plain_log_is_read_line_by_line()
    {
        var file = Read(Heading, "2026-11-25T14:20:00Z,40.25,95.0", "2026-11-25T14:20:10Z,-10,");

        Assert.True(file.IsGood);
        Assert.Equal([new(Start, 40.25, 95.0), new(Start.AddSeconds(10), -10, null)], file.Data.Rows);
        Assert.Equal(TimeSpan.FromSeconds(10), file.Data.UsualInterval);
        Assert.False(file.Data.ZoneAssumed);
        Assert.Empty(file.Notes);
    }

    [Theory]
    [InlineData("2026-11-25T14:20:00Z")]
    [InlineData("2026-11-25t14:20:00z")]
    [InlineData("2026-11-25 14:20Z")]
    [InlineData("2026-11-25T15:20:00+01:00")]
    [InlineData("2026-11-25T15:20:00+0100")]
    [InlineData("2026-11-25T15:20:00.000+01")]
    [InlineData("2026-11-25T08:50:00-05:30")]
    [InlineData("2026-11-25 14:20:00")]
    [InlineData("2026-11-25T14:20")]
    [InlineData("\"2026-11-25T14:20:00Z\"")]
    public void The_same_instant_is_read_in_every_way_it_may_be_written(string time)
    {
        var zoned =
            time.EndsWith("20", StringComparison.Ordinal) || time.EndsWith(":00", StringComparison.Ordinal) && time.Length == 19 ? "" : "Z";

        Assert.Equal(Start, Read(Heading, time + ",20,50", $"2026-11-25T15:00:00{zoned},20,50").Data?.Rows[0].At);
    }

    [Fact]
    public void Fractions_of_a_second_are_kept() =>
        Assert.Equal(
            Start.AddMilliseconds(250),
            Read(Heading, "2026-11-25T14:20:00Z,20,50", "2026-11-25T14:20:00.25Z,20,50").Data?.Rows[1].At
        );

    [Fact]
    public void Times_without_a_zone_are_utc_and_that_is_said()
    {
        var file = Read(Heading, "2026-11-25 14:20:00,20,50", "2026-11-25 14:21:00,20,50");

        Assert.True(file.Data?.ZoneAssumed);
        Assert.Contains(file.Notes, note => note.Contains("taken as UTC", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("2026-11-25")]
    [InlineData("25.11.2026 14:20")]
    [InlineData("11/25/2026 14:20:00")]
    [InlineData("2026-02-29T14:20:00Z")]
    [InlineData("2026-13-01T14:20:00Z")]
    [InlineData("2026-11-25T24:00:00Z")]
    [InlineData("2026-11-25T14:60:00Z")]
    [InlineData("2026-11-25T14:20:61Z")]
    [InlineData("2026-11-25T14:20:00.Z")]
    [InlineData("2026-11-25T14:20:00+15:00")]
    [InlineData("2026-11-25T14:20:00+1")]
    [InlineData("2026-11-25T14:20:00 UTC")]
    [InlineData("2026-11-25_14:20:00")]
    [InlineData("1764080400")]
    [InlineData("")]
    public void What_is_no_iso_time_is_refused_with_its_line(string time)
    {
        var file = Read(Heading, "2026-11-25T14:00:00Z,20,50", time + ",20,50");

        Assert.Null(file.Data);
        Assert.Equal(3, Assert.Single(file.Problems).Line);
        Assert.Contains("ISO 8601", file.Problems[0].Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-11-25T14:20:00Z", "same as on the line before")]
    [InlineData("2026-11-25T14:19:59Z", "goes back by 1 s")]
    [InlineData("2026-11-25T13:20:00Z", "goes back by 1 h 0 min")]
    [InlineData("2026-12-02T14:20:01Z", "jumps ahead by 7 days")]
    [InlineData("1970-01-01T00:00:00Z", "clock was not set")]
    [InlineData("2026-11-25T14:21:00", "no zone")]
    public void A_clock_that_stands_jumps_or_goes_back_is_refused(string time, string because)
    {
        var problem = Assert.Single(Read(Heading, "2026-11-25T14:20:00Z,20,50", time + ",20,50").Problems);

        Assert.Equal(3, problem.Line);
        Assert.Contains(because, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_jump_of_exactly_a_week_is_still_a_gap()
    {
        var file = Read(Heading, "2026-11-25T14:20:00Z,20,50", "2026-11-25T14:21:00Z,20,50", "2026-12-02T14:21:00Z,20,50");

        Assert.Equal([new(4, Start.AddMinutes(1), Start.AddMinutes(1).AddDays(7))], file.Data!.Gaps);
    }

    [Fact]
    public void A_gap_is_more_than_five_usual_intervals_and_more_than_a_minute()
    {
        static string[] Log(int lastStepSeconds, int step) =>
            [
                Heading,
                .. Enumerable
                    .Range(0, 5)
                    .Select(i => i * step)
                    .Append(4 * step + lastStepSeconds)
                    .Select(second => $"{Start.AddSeconds(second):yyyy-MM-ddTHH:mm:ssZ},20,50"),
            ];

        Assert.Empty(Read(Log(60, 1)).Data!.Gaps);
        Assert.Single(Read(Log(61, 1)).Data!.Gaps);
        Assert.Empty(Read(Log(300, 60)).Data!.Gaps);
        var gap = Read(Log(301, 60));
        Assert.Equal(7, Assert.Single(gap.Data!.Gaps).Line);
        Assert.Contains("5 min 1 s", Assert.Single(gap.Notes), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("nan,50", "temperature_c is not a plain number: \"nan\"")]
    [InlineData("NaN,50", "temperature_c")]
    [InlineData("Infinity,50", "temperature_c")]
    [InlineData("1e999,50", "temperature_c")]
    [InlineData("20 C,50", "temperature_c is not a plain number: \"20 C\"")]
    [InlineData(",50", "temperature_c is empty")]
    [InlineData("-100.01,50", "temperature_c is -100.01")]
    [InlineData("250.1,50", "temperature_c is 250.1")]
    [InlineData("20,-0.1", "humidity_pct is -0.1")]
    [InlineData("20,110.1", "humidity_pct is 110.1")]
    [InlineData("20,---", "humidity_pct")]
    public void A_value_that_cannot_be_is_refused_with_its_line_and_column(string values, string because)
    {
        var problem = Assert.Single(Read(Heading, "2026-11-25T14:20:00Z,20,50", "# pause", "", "2026-11-25T14:21:00Z," + values).Problems);

        Assert.Equal(5, problem.Line);
        Assert.Contains(because, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Values_at_the_edge_of_what_can_be_are_taken() =>
        Assert.True(Read(Heading, "2026-11-25T14:20:00Z,-100,0", "2026-11-25T14:21:00Z,250,110").IsGood);

    [Fact]
    public void Every_bad_line_is_named_not_only_the_first()
    {
        var file = Read(Heading, "x,20,50", "2026-11-25T14:20:00Z,20,50", "2026-11-25T14:21:00Z,y,50", "2026-11-25T14:22:00Z,20");

        Assert.Equal([2, 4, 5], file.Problems.Select(problem => problem.Line));
    }

    [Fact]
    public void A_hopeless_file_does_not_fill_the_page_with_complaints()
    {
        var file = Read([Heading, .. Enumerable.Repeat("x,y,z", 1000)]);

        Assert.Equal(21, file.Problems.Count);
        Assert.Contains("stopped", file.Problems[^1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Too_few_readings_are_refused()
    {
        Assert.Equal(FileFault.TooLittle, Assert.Single(Read(Heading).Problems).Fault);
        Assert.Equal(FileFault.TooLittle, Assert.Single(Read(Heading, "2026-11-25T14:20:00Z,20,50").Problems).Fault);
        Assert.Equal(FileFault.TooLittle, Assert.Single(ClimateLogFile.Read(default).Problems).Fault);
        Assert.Equal(FileFault.TooLittle, Assert.Single(Read("# nothing here").Problems).Fault);
    }

    [Fact]
    public void No_bytes_whatever_make_it_throw() =>
        Gen
            .Byte.Array[0, 400]
            .Sample(bytes =>
            {
                var file = ClimateLogFile.Read(Encoding.UTF8.GetBytes(Heading + "\n").Concat(bytes).ToArray());
                return file.IsGood != file.Problems.Count > 0;
            });

    [Fact]
    public void A_day_of_seconds_is_read_whole()
    {
        var text = new StringBuilder(Heading).Append("\r\n");
        for (var i = 0; i < 86_400; i++)
            text.Append(Start.AddSeconds(i).ToString("s")).Append(",40.12,95.3\r\n");

        var log = ClimateLogFile.Read(text.ToString().Utf8()).Data;

        Assert.Equal(86_400, log?.Rows.Count);
        Assert.Equal(new(Start.AddSeconds(86_399), 40.12, 95.3), log?.Rows[^1]);
    }
}
