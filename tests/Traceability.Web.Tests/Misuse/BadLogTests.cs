using System.Text;

namespace Traceability.Web.Tests.Misuse;

/// <summary>Climate logs as cabinets really deliver them: refused with their line, or kept, and no verdict is invented.</summary>
public sealed class BadLogTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Theory]
    [InlineData("T+0,40,50|T+30,40,50|T+29,40,50|T+60,40,50", "goes back by 1 min")]
    [InlineData("T+0,40,50|T+30,40,50|T+30,40.1,50|T+60,40,50", "same as on the line before")]
    [InlineData("T+0,40,50|T+30,NaN,50|T+60,40,50", "Line 3")]
    [InlineData("T+0,40,50|T+30,40|T+60,40,50", "Line 3")]
    [InlineData("T+0,40,50|T+30,400,50|T+60,40,50", "temperature_c is 400")]
    [InlineData("T+0,40,50", "")]
    public async Task A_log_whose_clock_or_values_cannot_be_is_refused_with_its_line(string rows, string words)
    {
        var (_, attempt) = await workshop.AtSoakAsync();

        var problem = (await workshop.PostAsync($"attempts/{attempt}/evidence?name=log", Workshop.Csv(workshop.Log(rows)))).Problem(400);

        Assert.Contains(words, problem, StringComparison.Ordinal);
        Assert.Contains("Nothing was stored", problem, StringComparison.Ordinal);
        Assert.Contains(
            "log (climate-log file)",
            (await workshop.PostAsync($"attempts/{attempt}/close", new { })).Problem(409),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_log_without_a_column_is_refused_with_what_it_has()
    {
        var (_, attempt) = await workshop.AtSoakAsync();

        Assert.Contains(
            "temperature_c",
            (
                await workshop.PostAsync(
                    $"attempts/{attempt}/evidence?name=log",
                    Workshop.Csv("time,humidity_pct\n2026-01-01T00:00:00Z,40\n2026-01-01T00:10:00Z,40\n")
                )
            ).Problem(400),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_log_with_a_gap_is_kept_and_the_gap_counts_as_an_excursion()
    {
        var (_, attempt) = await workshop.AtSoakAsync();
        await workshop.KeepAsync(attempt, "log", Workshop.Csv(workshop.Log("T+0,40,50|T+10,40,50|T+20,40,50|T+70,40,50|T+80,40,50")));
        workshop.Clock.Pass(TimeSpan.FromMinutes(81));

        var closed = (await workshop.PostAsync($"attempts/{attempt}/close", new { })).Expect(200);

        Assert.Equal("fail", closed.Text("verdict"));
        Assert.Equal("20.0", closed.List("readings").Single(r => r.Text("characteristic") == "warmDwellMinutes").Text("value"));
        Assert.Single((await workshop.GetAsync($"attempts/{attempt}")).Expect(200).List("evidence"));
    }

    [Theory]
    [InlineData("\uFEFFtime;temperature_c;humidity_pct\n", ';', ',')]
    [InlineData("time\ttemperature_c\thumidity_pct\r\n", '\t', '.')]
    public async Task A_log_with_another_separator_a_byte_order_mark_or_decimal_commas_is_judged_like_any_other(
        string heading,
        char separator,
        char point
    )
    {
        var (_, attempt) = await workshop.AtSoakAsync();
        var log =
            heading
            + workshop
                .Log("T+0,40.0,50.5|T+20,40.1,50.5|T+40,39.9,50.5|T+60,40.0,50.5")[SoakAndSound.Heading.Length..]
                .Replace(',', separator)
                .Replace('.', point);
        await workshop.KeepAsync(attempt, "log", new StringContent(log, Encoding.UTF8, "text/csv"));
        workshop.Clock.Pass(TimeSpan.FromMinutes(61));

        Assert.Equal("pass", (await workshop.PostAsync($"attempts/{attempt}/close", new { })).Expect(200).Text("verdict"));
    }

    [Fact]
    public async Task A_log_of_another_day_is_kept_and_gets_no_verdict()
    {
        var (_, attempt) = await workshop.AtSoakAsync();
        await workshop.KeepAsync(
            attempt,
            "log",
            Workshop.Csv(SoakAndSound.Heading + "2020-01-01T00:00:00Z,40,50\n2020-01-01T01:00:00Z,40,50\n")
        );

        await workshop.NoVerdictAsync(attempt, "belongs to another run", files: 1);
    }
}
