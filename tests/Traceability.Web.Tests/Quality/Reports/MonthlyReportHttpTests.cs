using System.Globalization;
using System.Net.Http.Headers;
using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Quality.Reports;

/// <summary>The report of a month over HTTP, on the facts of a small workshop.</summary>
public sealed class MonthlyReportHttpTests(Workshop workshop) : IClassFixture<Workshop>
{
    private string ThisMonth => workshop.Clock.GetUtcNow().ToString("yyyy-MM", CultureInfo.InvariantCulture);

    [Fact]
    public async Task The_month_tells_what_was_built_shipped_failed_and_came_back()
    {
        // A few cures pass: they must not run into the next month.
        if (workshop.Clock.GetUtcNow().AddDays(2).Month != workshop.Clock.GetUtcNow().Month)
        {
            workshop.Clock.Pass(TimeSpan.FromDays(3));
        }

        var before = await ReportAsync();
        var unit = await workshop.UnitAsync();
        (await workshop.PostAsync($"parts/{unit}/certificates", new { }, Workshop.Quality)).Expect(201);
        (await workshop.PostAsync($"parts/{unit}/shipments", new { customerReference = "Studio Nowhere" }, Workshop.Quality)).Expect(201);
        (await workshop.PostAsync("returns", new { serial = unit, complaint = "rustles" }, Workshop.ServiceDesk)).Expect(201);
        var failed = await workshop.MountAsync();
        await workshop.CureAsync(failed);
        await workshop.VerifyAsync(failed, 700);
        (await workshop.PostAsync("holds", new { part = failed, reason = "torn film" }, Workshop.Quality)).Expect(201);
        var report = await ReportAsync();
        Assert.Equal((1, 1), (Grown("output.finished"), Grown("output.shipped")));
        Assert.Equal(1, Grown("failures.failures"));
        Assert.Equal(1, Grown("holds.holds"));
        Assert.Contains(report.List("waiting.lines"), w => w.Text("serial") == failed && w.Text("code") == "stage-failed");
        Assert.Contains(report.List("returns.lines"), r => r.Text("serial") == unit && r.Text("done") == "still open");
        var film = report.List("filmLots.lots").Single(l => l.Text("lot") == Workshop.Film);
        Assert.True(film.At("failed").GetInt32() >= 1 && film.At("started").GetInt32() >= 3, film.GetRawText());
        var verify = report
            .List("yields.models")
            .Single(m => m.Text("model") == Workshop.Model)
            .List("stages")
            .Single(s => s.Text("stage") == "verify");
        Assert.True(verify.At("share.of").GetInt32() > verify.At("share.passed").GetInt32(), verify.GetRawText());
        Assert.Contains(
            report.List("control.charts").Select(c => c.Text("title")),
            t => t.Contains("Resonance on the ring", StringComparison.Ordinal)
        );
        Assert.Equal("True", report.Text("soFar"));

        int Grown(string figure) => report.At(figure).GetInt32() - before.At(figure).GetInt32();
    }

    [Fact]
    public async Task A_unit_is_finished_in_the_month_in_which_it_first_passed_its_last_stage()
    {
        await workshop.UnitAsync();
        workshop.Clock.Pass(TimeSpan.FromDays(62));
        Assert.Equal(0, (await ReportAsync()).At("output.finished").GetInt32());
        var earlier = workshop.Clock.GetUtcNow().AddDays(-62).ToString("yyyy-MM", CultureInfo.InvariantCulture);
        var then = await ReportAsync(earlier);
        Assert.True(then.At("output.finished").GetInt32() >= 1);
        Assert.Equal("False", then.Text("soFar"));
    }

    [Fact]
    public async Task What_was_open_at_the_end_of_a_month_stays_so_in_its_report()
    {
        var serial = await workshop.MountAsync();
        var raised = (await workshop.PostAsync($"parts/{serial}/nonconformities", new { code = "scratched", description = "a scratch" }))
            .Expect(201)
            .Id();
        var hold = (await workshop.PostAsync("holds", new { part = serial, reason = "to be looked at" }, Workshop.Quality))
            .Expect(201)
            .Id();
        var month = ThisMonth;
        workshop.Clock.Pass(TimeSpan.FromDays(62));
        (await workshop.PostAsync($"holds/{hold}/release", new { reason = "seen" }, Workshop.Quality)).Expect(201);
        (
            await workshop.PostAsync(
                $"nonconformities/{raised}/disposition",
                new
                {
                    kind = "scrap",
                    reason = "torn",
                    pin = Workshop.PinOf(Workshop.Quality),
                },
                Workshop.Quality
            )
        ).Expect(201);
        var (then, now) = (await ReportAsync(month), await ReportAsync());
        Assert.Contains(serial, then.Texts("waiting.lines", "serial"));
        Assert.Contains(then.List("holds.lines"), h => h.Text("what").EndsWith(serial, StringComparison.Ordinal));
        Assert.DoesNotContain(serial, now.Texts("waiting.lines", "serial"));
        Assert.DoesNotContain(now.List("holds.lines"), h => h.Text("what").EndsWith(serial, StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_PDF_is_served_with_the_month_in_its_name_to_be_looked_at()
    {
        using var client = await workshop.ClientAsync(Workshop.Quality);
        using var answer = await client.GetAsync($"/api/v1/quality/monthly-report.pdf?month={ThisMonth}");
        Assert.True(answer.IsSuccessStatusCode);
        Assert.Equal("application/pdf", answer.Content.Headers.ContentType?.MediaType);
        Assert.Equal(
            ContentDispositionHeaderValue.Parse($"inline; filename=\"quality-report-{ThisMonth}.pdf\""),
            answer.Content.Headers.ContentDisposition
        );
        Assert.Equal("%PDF-"u8.ToArray(), (await answer.Content.ReadAsByteArrayAsync())[..5]);
    }

    [Fact]
    public async Task A_month_in_which_nothing_happened_is_a_plain_report()
    {
        var report = await ReportAsync("1999-05");
        Assert.StartsWith("Nothing was recorded in May 1999", report.Text("nothing"), StringComparison.Ordinal);
        Assert.Equal("No unit was finished or sent out in May 1999.", report.Text("output.none"));
    }

    [Theory]
    [InlineData("", "say which month")]
    [InlineData("month=2026-13", "is not a month")]
    [InlineData("month=last", "is not a month")]
    [InlineData("month=2199-12", "has not begun")]
    [InlineData("month=%00", "is not a month")]
    public async Task A_month_that_cannot_be_reported_is_a_400_with_what_to_do(string query, string because)
    {
        Assert.Contains(because, (await workshop.GetAsync($"quality/monthly-report.json?{query}")).Problem(400), StringComparison.Ordinal);
        Assert.Contains(because, (await workshop.GetAsync($"quality/monthly-report.pdf?{query}")).Problem(400), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Workshop.Builder)]
    [InlineData(Workshop.ServiceDesk)]
    [InlineData(Workshop.Lead)]
    public async Task Only_the_quality_lead_may_read_it(string badge)
    {
        (await workshop.GetAsync($"quality/monthly-report.json?month={ThisMonth}", badge)).Expect(403);
        (await workshop.GetAsync($"quality/monthly-report.pdf?month={ThisMonth}", badge)).Expect(403);
        var visitor = await DeskClient.SignInAsync(workshop, badge);
        (await visitor.GetAsync("/quality/monthly-report")).Expect(403);
    }

    [Fact]
    public async Task The_page_offers_the_months_and_leads_to_the_PDF()
    {
        var lead = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        var page = (await lead.GetAsync($"/quality/monthly-report?month={ThisMonth}")).Html;
        Assert.Contains($"href=\"/api/v1/quality/monthly-report.pdf?month={ThisMonth}\"", page, StringComparison.Ordinal);
        Assert.Contains($"<option value=\"{ThisMonth}\" selected=\"selected\">", page, StringComparison.Ordinal);
        Assert.Contains("/quality/monthly-report", (await lead.GetAsync("/quality")).Html, StringComparison.Ordinal);
        (await lead.GetAsync($"/api/v1/quality/monthly-report.pdf?month={ThisMonth}")).Expect(200);
        var refused = await lead.GetAsync("/quality/monthly-report?month=2026-99");
        Assert.Contains("is not a month", refused.Expect(400).Words, StringComparison.Ordinal);
    }

    private async Task<System.Text.Json.JsonElement> ReportAsync(string? month = null) =>
        (await workshop.GetAsync($"quality/monthly-report.json?month={month ?? ThisMonth}")).Expect(200);
}
