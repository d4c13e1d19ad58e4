using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Traceability.Web.Tests.Pages;
using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Quality.Notices;

/// <summary>
/// Twenty-one diaphragms around 900 Hz and one at 919: inside its limits of 880 to 920, but beyond those of the chart. FILM-BAD: six
/// diaphragms that all fail. Each test works on a workshop of its own, because acknowledging changes what the others would see.
/// </summary>
public sealed class NoticeTests : IAsyncLifetime
{
    private const string Steady = "FILM-1",
        Bad = "FILM-BAD";
    private static readonly decimal[] Quiet =
    [
        .. Enumerable
            .Range(0, 21)
            .Select(i =>
                (i % 4) switch
                {
                    0 => 900m,
                    1 => 901m,
                    2 => 900m,
                    _ => 898.5m,
                }
            ),
    ];
    private readonly Workshop w = new();

    public async Task InitializeAsync() => await w.InitializeAsync();

    public async Task DisposeAsync() => await w.DisposeAsync();

    [Fact]
    public async Task A_point_beyond_the_limits_is_told_until_it_is_acknowledged_and_again_when_a_new_one_breaks_the_rule()
    {
        Assert.Empty((await NoticesAsync()).List());
        await MeasuredAsync(Steady, [.. Quiet, 919m]);
        var notice = Rule1(await NoticesAsync());
        Assert.Equal(
            ("diaphragm", Workshop.Model, "verify", "ringHz", "919"),
            (notice.Text("kind"), notice.Text("model"), notice.Text("stage"), notice.Text("characteristic"), notice.Text("value"))
        );

        var done = (await AcknowledgeAsync(notice.Text("key"), new { note = "the jig was dirty" })).Expect(201);
        Assert.Equal(("the jig was dirty", Workshop.Quality), (done.Text("note"), done.Text("by.badge")));
        Assert.DoesNotContain((await NoticesAsync()).List(), IsRule1);
        Assert.Contains("acknowledged already", (await AcknowledgeAsync(notice.Text("key"), null)).Problem(409), StringComparison.Ordinal);

        await MeasuredAsync(Steady, 900m);
        Assert.DoesNotContain((await NoticesAsync()).List(), IsRule1);
        await MeasuredAsync(Steady, 881m);
        var again = Rule1(await NoticesAsync());
        Assert.Equal("881", again.Text("value"));
        Assert.NotEqual(notice.Text("key"), again.Text("key"));

        // A point that came after the page was looked at is not acknowledged with it.
        await MeasuredAsync(Steady, 882m);
        (await AcknowledgeAsync(again.Text("key"), null)).Expect(404);
        Assert.Equal("2", Rule1(await NoticesAsync()).Text("points"));
    }

    [Fact]
    public async Task A_correction_that_takes_the_break_away_takes_the_notice_away()
    {
        var serials = await MeasuredAsync(Steady, [.. Quiet, 919m]);
        var key = Rule1(await NoticesAsync()).Text("key");
        await CorrectAsync(serials[^1], 900);
        Assert.DoesNotContain((await NoticesAsync()).List(), IsRule1);
        Assert.Contains("no such notice now", (await AcknowledgeAsync(key, null)).Problem(404), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_film_lot_that_stands_out_is_told_until_acknowledged_and_again_when_it_fails_again()
    {
        await WorkshopSetUp.LotAsync(w, Bad, "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        await MeasuredAsync(Steady, [.. Quiet.Take(8)]);
        await MeasuredAsync(Bad, 930, 931, 932, 933, 934, 935);
        var notice = (await NoticesAsync()).List().Single(n => n.Text("what") == "film-lot");
        Assert.Equal((Bad, "6", "6"), (notice.Text("filmLot"), notice.Text("points"), notice.Text("judged")));
        (await AcknowledgeAsync(notice.Text("key"), null)).Expect(201);
        Assert.DoesNotContain((await NoticesAsync()).List(), n => n.Text("what") == "film-lot");
        await MeasuredAsync(Bad, 936);
        Assert.Contains((await NoticesAsync()).List(), n => n.Text("what") == "film-lot");
    }

    [Fact]
    public async Task The_desk_shows_it_once_its_form_acknowledges_it_and_the_database_keeps_that()
    {
        var desk = await DeskClient.SignInAsync(w, Workshop.Quality);
        Assert.Contains("Nothing is watched yet", (await desk.GetAsync("/quality")).Expect(200).Words, StringComparison.Ordinal);
        var serials = await MeasuredAsync(Steady, [.. Quiet, 919m]);
        var page = (await desk.GetAsync("/quality")).Expect(200);
        Assert.Contains(
            "beyond limits Resonance on the ring , diaphragm, TEST-1 , Resonance on the ring.",
            page.Words,
            StringComparison.Ordinal
        );
        Assert.Contains("Rule 1: one point more than 3 sigma out", page.Words, StringComparison.Ordinal);
        Assert.Contains($"/parts/{serials[^1]}", page.Html, StringComparison.Ordinal);
        Assert.Contains("Characteristics watched: 1; with too few values yet: 3.", page.Words, StringComparison.Ordinal);

        var key = Rule1(await NoticesAsync()).Text("key");
        var after = (await desk.SendAsync(page, $"acknowledge-{key}", ("note", "looked at the jig"))).Expect(200);
        Assert.Equal("/quality", after.Path);
        Assert.Contains("The notice is acknowledged", after.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("Rule 1:", after.Words, StringComparison.Ordinal);
        var all = (await desk.GetAsync("/quality/notices")).Expect(200);
        Assert.Contains("looked at the jig", all.Words, StringComparison.Ordinal);
        Assert.Contains("Quinn Quality", all.Words, StringComparison.Ordinal);

        await using (var door = BackDoor.Of(w, Migrations.WorkshopOptions.AppRole))
        {
            Assert.Equal(1, await door.AskAsync<long>("select count(*) from ledger_entries where kind = 'acknowledge-notice'"));
            Assert.Equal(
                Npgsql.PostgresErrorCodes.InsufficientPrivilege,
                (await door.RefusalAsync("update notice_acknowledgements set note = 'never seen'")).SqlState
            );
            Assert.Equal(
                Npgsql.PostgresErrorCodes.InsufficientPrivilege,
                (await door.RefusalAsync("delete from notice_acknowledgements")).SqlState
            );
        }

        var twice = await desk.SendAsync(page, $"acknowledge-{key}", ("Key", Guid.NewGuid().ToString("N")));
        Assert.Contains("acknowledged already", twice.Expect(409).Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_chart_that_a_notice_leads_to_marks_the_point()
    {
        var serials = await MeasuredAsync(Steady, [.. Quiet, 919m]);
        var page = (await (await DeskClient.SignInAsync(w, Workshop.Quality)).GetAsync("/quality/notices")).Expect(200);
        var link = System.Net.WebUtility.HtmlDecode(
            page.Html[(page.Html.IndexOf("href=\"/quality/control-chart?stage=verify", StringComparison.Ordinal) + 6)..].Split('"')[0]
        );
        var chart = (await w.GetAsync("/api/v1" + link)).Expect(200);
        Assert.Equal(Quiet.Length + 1, chart.At("values").GetInt32());
        Assert.Contains(1, chart.List("points").Single(p => p.Text("serial") == serials[^1]).List("rules").Select(r => r.GetInt32()));
    }

    /// <summary>The budget of the desk is 100 ms; the best of ten is taken, because the tests share the machine with others.</summary>
    [Fact]
    public async Task The_desk_is_fast_with_notices_on_it()
    {
        await MeasuredAsync(Steady, [.. Quiet, 919m]);
        var desk = await DeskClient.SignInAsync(w, Workshop.Quality);
        var best = TimeSpan.MaxValue;
        for (var i = 0; i < 10; i++)
        {
            var watch = Stopwatch.StartNew();
            (await desk.GetAsync("/quality")).Expect(200);
            best = watch.Elapsed < best ? watch.Elapsed : best;
        }

        Assert.True(
            best < TimeSpan.FromMilliseconds(100),
            string.Create(CultureInfo.InvariantCulture, $"the desk took {best.TotalMilliseconds:0} ms at best")
        );
    }

    private static bool IsRule1(JsonElement notice) =>
        notice.Text("what") == "rule-break" && notice.Text("rule") == "1" && notice.Text("characteristic") == "ringHz";

    private static JsonElement Rule1(JsonElement notices) => notices.List().Single(IsRule1);

    private async Task<JsonElement> NoticesAsync() => (await w.GetAsync("quality/notices")).Expect(200);

    private Task<Reply> AcknowledgeAsync(string key, object? body) =>
        w.PostAsync($"quality/notices/{key}/acknowledge", body, Workshop.Quality);

    private async Task CorrectAsync(string serial, decimal value)
    {
        var reading = (await w.GetAsync($"parts/{serial}/history")).Expect(200).List().Last(h => h.Text("what") == "reading");
        (await w.PostAsync($"readings/{reading.Id()}/corrections", new { value, reason = "misread" }, Workshop.Quality)).Expect(201);
    }

    private async Task<IReadOnlyList<string>> MeasuredAsync(string film, params decimal[] values)
    {
        var serials = new List<string>();
        foreach (var _ in values)
        {
            serials.Add(await w.MountAsync(film));
        }

        await w.CureAsync([.. serials]);
        foreach (var (serial, value) in serials.Zip(values))
        {
            await w.VerifyAsync(serial, value);
        }

        return serials;
    }
}
