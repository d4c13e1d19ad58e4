using System.Text.Json;
using Traceability.Web.Tests.Pages;
using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Station;

public sealed class InstrumentTokenTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_reading_sent_to_a_station_lands_in_the_one_attempt_open_there_and_names_the_instrument()
    {
        var token = await MakeAsync("RB-1");
        Assert.Contains(
            "no attempt is open",
            (await SendAsync(token, "stations/BENCH-2/readings", Ring(901))).Problem(409),
            StringComparison.Ordinal
        );
        var serial = await workshop.MountAsync();
        await workshop.CureAsync(serial);
        var attempt = await workshop.OpenAsync(serial, "verify", "BENCH-2", "RB-1");
        var taken = (await SendAsync(token, "stations/bench-2/readings", Ring("901.50"))).Expect(201).List("readings")[0];
        Assert.Equal(("901.50", "instrument"), (taken.Text("value"), taken.Text("source")));
        var second = await workshop.RegisterAsync("diaphragm");
        await workshop.OpenAsync(second, "mount", "BENCH-2", "RB-1");
        Assert.Contains(
            "2 attempts are open",
            (await SendAsync(token, "stations/BENCH-2/readings", Ring(901))).Problem(409),
            StringComparison.Ordinal
        );
        (await workshop.PostAsync($"attempts/{attempt}/close", new { })).Expect(200);
        var history = (await workshop.GetAsync($"parts/{serial}/history")).Expect(200);
        Assert.Contains("RB-1", history.ToString(), StringComparison.Ordinal);
        (await SendAsync(token, $"stations/BENCH-2/readings", new { characteristic = "coarseHz", value = 850 })).Expect(201);
        Assert.Contains("\"RB-1\"", (await workshop.GetAsync($"parts/{second}/history")).Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_instrument_sends_only_into_attempts_that_name_it()
    {
        var serial = await workshop.MountAsync();
        await workshop.CureAsync(serial);
        var attempt = await workshop.OpenAsync(serial, "verify", "BENCH-1", "RB-1");
        var other = await MakeAsync("AN-1");
        Assert.Contains(
            "does not name",
            (await SendAsync(other, $"attempts/{attempt}/readings", Ring(900))).Problem(403),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "does not name",
            (await SendAsync(other, $"attempts/{attempt}/evidence?name=curve", Workshop.Csv(Workshop.FlatResponse))).Problem(403),
            StringComparison.Ordinal
        );
        (await SendAsync(await MakeAsync("RB-1"), $"attempts/{attempt}/readings", Ring(900))).Expect(201);
    }

    [Fact]
    public async Task A_token_opens_nothing_else_not_even_to_read()
    {
        var token = await MakeAsync("RB-1");
        foreach (
            var path in new[]
            {
                "parts",
                "stations",
                "lots",
                "instruments",
                "holds",
                "people",
                "search?q=D",
                "routes",
                $"parts/{await workshop.MountAsync()}",
            }
        )
        {
            Assert.Contains("instrument", (await SendAsync(token, path, null)).Problem(403), StringComparison.Ordinal);
        }

        (await SendAsync(token, "parts", new { kind = "unit", model = Workshop.Model })).Expect(403);
        (await SendAsync(token, "instruments/RB-1/tokens", new { title = "another" })).Expect(403);
        (await SendAsync(token, "instruments/RB-1/checks", new { passed = true })).Expect(403);
        Assert.Equal(403, (int)(await SendAsync(token, "/parts", null)).Status);
    }

    [Fact]
    public async Task A_revoked_or_invented_token_is_not_signed_in()
    {
        var made = (await workshop.PostAsync("instruments/rb-1/tokens", new { title = "bench 2" }, Workshop.Lead)).Expect(201);
        var token = made.Text("token");
        Assert.Contains(
            made.Id(),
            (await workshop.GetAsync("instruments/RB-1/tokens", Workshop.Lead))
                .Expect(200)
                .List()
                .Where(t => t.Text("good") == "True")
                .Select(t => t.Id())
        );
        (
            await workshop.PostAsync($"instruments/AN-1/tokens/{made.Id()}/revoke", new { reason = "wrong instrument" }, Workshop.Lead)
        ).Expect(404);
        (await workshop.PostAsync($"instruments/RB-1/tokens/{made.Id()}/revoke", new { reason = "computer sold" }, Workshop.Lead)).Expect(
            200
        );
        (await workshop.PostAsync($"instruments/RB-1/tokens/{made.Id()}/revoke", new { reason = "again" }, Workshop.Lead)).Expect(409);
        (await SendAsync(token, "stations/BENCH-1/readings", Ring(900))).Expect(401);
        (await SendAsync("instrument-invented", "stations/BENCH-1/readings", Ring(900))).Expect(401);
        (await workshop.PostAsync("instruments/RB-1/tokens", new { title = "mine" }, Workshop.Quality)).Expect(403);
        (await workshop.PostAsync("instruments/RB-1/tokens", new { title = " " }, Workshop.Lead)).Expect(400);
        (await workshop.PostAsync("instruments/NOTHING/tokens", new { title = "x" }, Workshop.Lead)).Expect(404);
    }

    [Fact]
    public async Task The_token_itself_is_shown_once_and_kept_nowhere()
    {
        var key = Guid.NewGuid().ToString();
        var token = (await workshop.PostAsync("instruments/AN-1/tokens", new { title = "bench 3" }, Workshop.Lead, key))
            .Expect(201)
            .Text("token");
        Assert.DoesNotContain(
            token,
            (await workshop.PostAsync("instruments/AN-1/tokens", new { title = "bench 3" }, Workshop.Lead, key)).Problem(409),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain(token, (await workshop.GetAsync("instruments/AN-1/tokens", Workshop.Lead)).Body, StringComparison.Ordinal);
        await using var door = BackDoor.Of(workshop);
        foreach (
            var (table, text) in new[]
            {
                ("instrument_tokens", "to_jsonb(t)::text"),
                ("ledger_entries", "body"),
                ("idempotent_answers", "body"),
            }
        )
        {
            Assert.Equal(0, await door.AskAsync<long>($"select count(*) from {table} t where {text} like '%{token}%'"));
        }
    }

    [Fact]
    public async Task A_held_instrument_sends_in_vain()
    {
        var token = await MakeAsync("AN-1");
        var serial = await workshop.RegisterAsync("diaphragm");
        var attempt = await workshop.OpenAsync(serial, "mount", "PLATE-1");
        var hold = (await workshop.PostAsync("holds", new { instrument = "AN-1", reason = "dropped" }, Workshop.Quality)).Expect(201).Id();
        Assert.Contains(
            "dropped",
            (await SendAsync(token, "stations/PLATE-1/readings", new { characteristic = "coarseHz", value = 850 })).Problem(409),
            StringComparison.Ordinal
        );
        (await workshop.PostAsync($"holds/{hold}/release", new { reason = "fine" }, Workshop.Quality)).Expect(201);
        (await workshop.PostAsync($"attempts/{attempt}/abandon", new { reason = "enough" })).Expect(200);
    }

    [Fact]
    public async Task The_workshop_lead_makes_a_token_on_the_page_sees_it_once_and_revokes_it()
    {
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Lead);
        var made = (await desk.SendAsync("/instruments/RB-1/tokens", "make", ("title", "page token"))).Expect(200);
        Assert.Contains("instrument-", made.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("instrument-", (await desk.GetAsync("/instruments/RB-1/tokens")).Words, StringComparison.Ordinal);
        var id = (await workshop.GetAsync("instruments/RB-1/tokens", Workshop.Lead))
            .Expect(200)
            .List()
            .Single(t => t.Text("title") == "page token")
            .Id();
        Assert.Contains(
            "revoked",
            (await desk.SendAsync("/instruments/RB-1/tokens", $"revoke-{id}", ("reason", "lost"))).Expect(200).Words,
            StringComparison.Ordinal
        );
        (await (await DeskClient.SignInAsync(workshop, Workshop.Quality)).GetAsync("/instruments/RB-1/tokens")).Expect(403);
    }

    private static object Ring(object value) => new { characteristic = "ringHz", value };

    private async Task<string> MakeAsync(string instrument) =>
        (await workshop.PostAsync($"instruments/{instrument}/tokens", new { title = "a test" }, Workshop.Lead)).Expect(201).Text("token");

    private async Task<Reply> SendAsync(string token, string path, object? body)
    {
        using var client = await workshop.ClientAsync(null);
        using var request = new HttpRequestMessage(
            body is null ? HttpMethod.Get : HttpMethod.Post,
            path.StartsWith('/') ? path : $"/api/v1/{path}"
        );
        request.Headers.Authorization = new("Bearer", token);
        request.Content =
            body as HttpContent
            ?? (body is null ? null : new StringContent(JsonSerializer.Serialize(body), System.Text.Encoding.UTF8, "application/json"));
        using var answer = await client.SendAsync(request);
        var text = await answer.Content.ReadAsStringAsync();
        var isJson = answer.Content.Headers.ContentType?.MediaType?.EndsWith("json", StringComparison.Ordinal) == true;
        return new(answer.StatusCode, isJson ? JsonSerializer.Deserialize<JsonElement>(text) : default, text);
    }
}
