using System.Net;
using System.Text;

namespace Traceability.Web.Tests.Http;

/// <summary>Every problem names its kind by an address of ours, at which somebody can read what it means.</summary>
public sealed class ProblemTypeTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Theory]
    [InlineData(400, "invalid-request", "POST", "holds", """{"part":"U1","reason":""}""")]
    [InlineData(400, "invalid-request", "POST", "holds", "{")]
    [InlineData(400, "invalid-request", "GET", "parts?limit=0", null)]
    [InlineData(401, "not-signed-in", "GET", "parts", null, null)]
    [InlineData(401, "wrong-badge-or-pin", "POST", "sessions", """{"badge":"NOBODY","pin":"8462"}""", null)]
    [InlineData(403, "not-allowed", "POST", "holds", """{"part":"U1","reason":"x"}""", Workshop.Builder)]
    [InlineData(404, "not-found", "GET", "parts/U9999", null)]
    [InlineData(404, "no-such-address", "GET", "nothing-here", null)]
    [InlineData(405, "method-not-allowed", "DELETE", "parts", null)]
    [InlineData(409, "already-done", "POST", "lots/FILM-1/release", """{"reason":"again"}""")]
    [InlineData(409, "already-exists", "POST", "stations", """{"code":"BENCH-1","title":"again"}""", Workshop.Lead)]
    [InlineData(415, "unsupported-content", "POST", "holds", "plain")]
    public async Task A_problem_names_its_kind(
        int status,
        string kind,
        string method,
        string path,
        string? body,
        string? badge = Workshop.Quality
    )
    {
        var request = new HttpRequestMessage(new(method), $"/api/v1/{path}");
        if (body is not null)
        {
            request.Content = new StringContent(body, Encoding.UTF8, body == "plain" ? "text/plain" : "application/json");
        }

        await IsAsync(await workshop.SendAsync(request, badge), status, kind);
    }

    [Fact]
    public async Task A_closed_gate_a_second_reading_and_a_filled_position_are_told_apart()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        await IsAsync(
            await workshop.PostAsync($"parts/{serial}/attempts", new { stage = "cure", station = "PLATE-1" }),
            409,
            "gate-closed"
        );
        var attempt = await workshop.OpenAsync(serial, "mount");
        (await workshop.PostAsync($"attempts/{attempt}/readings", new { characteristic = "coarseHz", value = 850 })).Expect(201);
        await IsAsync(
            await workshop.PostAsync($"attempts/{attempt}/readings", new { characteristic = "coarseHz", value = 850 }),
            409,
            "duplicate-reading"
        );
        (await workshop.PostAsync($"attempts/{attempt}/fittings", new { position = "film", lot = Workshop.Film })).Expect(201);
        await IsAsync(
            await workshop.PostAsync($"attempts/{attempt}/fittings", new { position = "film", lot = Workshop.Film }),
            409,
            "position-filled"
        );
        (await workshop.PostAsync($"attempts/{attempt}/close", new { })).Expect(200);
        await IsAsync(await workshop.PostAsync($"attempts/{attempt}/close", new { }), 409, "attempt-ended");
    }

    [Fact]
    public async Task A_body_that_is_too_large_names_its_kind()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var attempt = await workshop.OpenAsync(serial, "mount");
        var photo = new ByteArrayContent(new byte[(64 * 1024 * 1024) + 1]);
        photo.Headers.ContentType = new("image/jpeg");
        await IsAsync(await workshop.PostAsync($"attempts/{attempt}/evidence", photo), 413, "body-too-large");
    }

    [Fact]
    public async Task A_key_used_again_and_one_guess_too_many_name_their_kinds()
    {
        var serial = await workshop.RegisterAsync("unit");
        (await workshop.PostAsync("holds", new { part = serial, reason = "once" }, Workshop.Quality, "kind-key")).Expect(201);
        await IsAsync(
            await workshop.PostAsync("holds", new { part = serial, reason = "twice" }, Workshop.Quality, "kind-key"),
            422,
            "key-reused"
        );
        Reply last;
        var guesses = 0;
        do
        {
            last = await workshop.PostAsync("sessions", new { badge = "GUESSED", pin = $"84{guesses:00}" }, null);
        } while (last.Status == HttpStatusCode.Unauthorized && ++guesses < 20);
        await IsAsync(last, 429, "too-many-attempts");
    }

    [Fact]
    public async Task Who_accepts_only_CSV_still_gets_a_problem_with_its_kind()
    {
        var request = new HttpRequestMessage(HttpMethod.Get, "/api/v1/parts?state=zzz");
        request.Headers.Add("Accept", "text/csv");
        await IsAsync(await workshop.SendAsync(request, Workshop.Quality), 400, "invalid-request");
    }

    [Fact]
    public async Task A_kind_that_nobody_knows_has_no_page() => (await workshop.GetAsync("/problems/no-such-kind", null)).Expect(404);

    /// <summary>
    /// The problem has that status and kind; its address answers a page without signing in, and the page of the interface lists it.
    /// </summary>
    private async Task IsAsync(Reply reply, int status, string kind)
    {
        var problem = reply.Expect(status);
        Assert.Equal(("/problems/" + kind, status), (problem.Text("type"), problem.At("status").GetInt32()));
        Assert.NotEmpty(problem.Text("title"));
        Assert.NotEmpty(problem.Text("detail"));
        Assert.NotEmpty(problem.Text("requestId"));
        Assert.Contains(
            problem.Text("title"),
            WebUtility.HtmlDecode((await workshop.GetAsync(problem.Text("type"), null)).Body),
            StringComparison.Ordinal
        );
        Assert.Contains($"href=\"{problem.Text("type")}\"", (await workshop.GetAsync("/docs", null)).Body, StringComparison.Ordinal);
    }
}
