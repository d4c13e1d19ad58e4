using Traceability.Web.Tests.Pages;
using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Identity;

/// <summary>Nobody sets another's PIN: the lead gives a code that works once and for a day, and the person sets the PIN with it.</summary>
public sealed class PinCodeTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_new_person_takes_up_the_code_of_the_answer_once_and_signs_in_with_a_PIN_that_nobody_else_set()
    {
        var code = (await AddAsync("N1")).Text("code");
        await SignInAsync("N1", code, 401);
        await SetAsync("N1", code, "9713", 200);
        await SignInAsync("N1", "9713", 200);
        await SetAsync("N1", code, "9723", 401);
        await SignInAsync("N1", "9713", 200);
    }

    [Fact]
    public async Task A_PIN_is_set_by_its_person_only()
    {
        var refused = await workshop.PostAsync(
            "people",
            new
            {
                badge = "N2",
                name = "Nora",
                pin = "9713",
            },
            Workshop.Lead
        );
        Assert.Contains("pin", refused.Problem(400), StringComparison.Ordinal);
        (await workshop.PostAsync($"people/{Workshop.Builder}/pin", new { pin = "9713" }, Workshop.Lead)).Expect(404);
        (await workshop.PostAsync($"people/{Workshop.Builder}/pin-code", new { reason = "curious" }, Workshop.Quality)).Expect(403);
        (await workshop.PostAsync($"people/{Workshop.Builder}/pin-code", new { reason = " " }, Workshop.Lead)).Expect(400);
        (await workshop.PostAsync("people/NOBODY/pin-code", new { reason = "forgotten" }, Workshop.Lead)).Expect(404);
        Assert.Contains(
            "somebody else",
            (await workshop.PostAsync($"people/{Workshop.Lead}/pin-code", new { reason = "forgotten" }, Workshop.Lead)).Problem(409),
            StringComparison.Ordinal
        );
        await SignInAsync(Workshop.Lead, Workshop.PinOf(Workshop.Lead), 200);
    }

    [Fact]
    public async Task A_code_ends_the_PIN_of_before_and_every_session_at_once()
    {
        await workshop.PersonAsync("N3", "Nadia", "builder");
        using var session = await SessionAsync("N3");
        Assert.Equal(200, (int)(await session.GetAsync("/api/v1/stations")).StatusCode);
        var code = (await workshop.PostAsync("people/N3/pin-code", new { reason = "seen by somebody" }, Workshop.Lead))
            .Expect(201)
            .Text("code");
        Assert.Equal(401, (int)(await session.GetAsync("/api/v1/stations")).StatusCode);
        await SignInAsync("N3", Workshop.PinOf("N3"), 401);
        (
            await workshop.PostAsync(
                "pins",
                new
                {
                    badge = "N3",
                    pin = Workshop.PinOf("N3"),
                    newPin = "9713",
                },
                null
            )
        ).Expect(401);
        await SetAsync("n3", code.ToLowerInvariant().Replace("-", " ", StringComparison.Ordinal), "9713", 200);
        await SignInAsync("N3", "9713", 200);
    }

    [Fact]
    public async Task The_latest_code_counts_and_after_a_day_none()
    {
        var first = (await AddAsync("N4")).Text("code");
        var second = (await workshop.PostAsync("people/N4/pin-code", new { reason = "mislaid" }, Workshop.Lead)).Expect(201).Text("code");
        await SetAsync("N4", first, "9713", 401);
        workshop.Clock.Pass(TimeSpan.FromHours(24));
        await SetAsync("N4", second, "9713", 401);
        var third = (await workshop.PostAsync("people/N4/pin-code", new { reason = "too late" }, Workshop.Lead)).Expect(201).Text("code");
        workshop.Clock.Pass(TimeSpan.FromHours(23));
        await SetAsync("N4", third, "9713", 200);
    }

    [Fact]
    public async Task Who_changes_the_own_PIN_is_signed_out_everywhere()
    {
        await workshop.PersonAsync("N5", "Nils", "builder");
        using var session = await SessionAsync("N5");
        (
            await workshop.PostAsync(
                "pins",
                new
                {
                    badge = "N5",
                    pin = "9713",
                    newPin = "971350",
                },
                null
            )
        ).Expect(401);
        Assert.Equal(200, (int)(await session.GetAsync("/api/v1/stations")).StatusCode);
        (
            await workshop.PostAsync(
                "pins",
                new
                {
                    badge = "N5",
                    pin = Workshop.PinOf("N5"),
                    newPin = "973109",
                },
                null
            )
        ).Expect(200);
        Assert.Equal(401, (int)(await session.GetAsync("/api/v1/stations")).StatusCode);
        await SignInAsync("N5", Workshop.PinOf("N5"), 401);
        await SignInAsync("N5", "973109", 200);
    }

    [Theory]
    [InlineData("1111")]
    [InlineData("1234")]
    [InlineData("98765")]
    [InlineData("0369")]
    [InlineData("9630")]
    public async Task A_PIN_of_digits_in_a_row_is_refused(string pin)
    {
        var said = (
            await workshop.PostAsync(
                "pins",
                new
                {
                    badge = Workshop.ServiceDesk,
                    pin = Workshop.PinOf(Workshop.ServiceDesk),
                    newPin = pin,
                },
                null
            )
        ).Problem(400);
        Assert.Contains("first that anybody tries", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Wrong_codes_close_the_badge_like_wrong_PINs()
    {
        var code = (await AddAsync("N6")).Text("code");
        for (var i = 0; i < 5; i++)
        {
            await SetAsync("N6", "BBBB-BBBB-BBBB-BBBB", "9713", 401);
        }

        await SetAsync("N6", code, "9713", 429);
        workshop.Clock.Pass(TimeSpan.FromMinutes(6));
        await SetAsync("N6", code, "9713", 200);
    }

    [Fact]
    public async Task A_code_is_shown_once_and_kept_nowhere()
    {
        var added = (await workshop.PostAsync("people", new { badge = "N7", name = "Nell" }, Workshop.Lead, "key-n7"))
            .Expect(201)
            .Text("code");
        Assert.EndsWith(
            "/problems/secret-already-shown",
            (await workshop.PostAsync("people", new { badge = "N7", name = "Nell" }, Workshop.Lead, "key-n7")).Expect(409).Text("type"),
            StringComparison.Ordinal
        );
        var given = (await workshop.PostAsync("people/N7/pin-code", new { reason = "mislaid" }, Workshop.Lead, "key-n7-code"))
            .Expect(201)
            .Text("code");
        var again = await workshop.PostAsync("people/N7/pin-code", new { reason = "mislaid" }, Workshop.Lead, "key-n7-code");
        Assert.EndsWith("/problems/secret-already-shown", again.Expect(409).Text("type"), StringComparison.Ordinal);
        (
            await workshop.PostAsync(
                "pins",
                new
                {
                    badge = "N7",
                    code = given,
                    newPin = "973197",
                },
                null,
                "key-pins"
            )
        ).Expect(200);
        (await workshop.PostAsync("sessions", new { badge = "N7", pin = "973197" }, null, "key-sessions")).Expect(200);
        (await workshop.PostAsync("sessions", new { badge = "N7", pin = "973197" }, null, "key-sessions")).Expect(200);
        await using var door = BackDoor.Of(workshop);
        Assert.Equal(0, await door.AskAsync<long>("select count(*) from idempotent_answers where key in ('key-pins', 'key-sessions')"));
        foreach (var secret in new[] { added, given, "973197" })
        {
            foreach (var table in new[] { "idempotent_answers", "ledger_entries", "pin_codes", "pin_settings", "people" })
            {
                Assert.Equal(0, await door.AskAsync<long>($"select count(*) from {table} t where to_jsonb(t)::text like '%{secret}%'"));
            }
        }
    }

    [Fact]
    public async Task By_page_a_person_sets_the_own_PIN_with_the_code()
    {
        var code = (await AddAsync("N8")).Text("code");
        var visitor = new Visitor(await workshop.ClientAsync(null));
        Assert.Contains("/pin", (await visitor.GoAsync("/sign-in")).Html, StringComparison.Ordinal);
        await visitor.GoAsync("/pin?badge=N8");
        Assert.Contains(
            "two different ways",
            (await visitor.SendAsync("/pin", ("Badge", "N8"), ("Known", code), ("NewPin", "973190"), ("Again", "973191"))).Text,
            StringComparison.Ordinal
        );
        var weak = await visitor.SendAsync("/pin", ("Badge", "N8"), ("Known", code), ("NewPin", "4567"), ("Again", "4567"));
        Assert.Contains("first that anybody tries", weak.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(code, weak.Html, StringComparison.Ordinal);
        var wrong = await visitor.SendAsync("/pin", ("Badge", "N8"), ("Known", "BBBB"), ("NewPin", "973190"), ("Again", "973190"));
        Assert.Contains("do not belong together", wrong.Text, StringComparison.Ordinal);
        var set = await visitor.SendAsync("/pin", ("Badge", "N8"), ("Known", code), ("NewPin", "973190"), ("Again", "973190"));
        Assert.Equal("/sign-in", set.Path);
        Assert.Contains("Your PIN is set", set.Text, StringComparison.Ordinal);
        await SignInAsync("N8", "973190", 200);
    }

    private async Task<System.Text.Json.JsonElement> AddAsync(string badge) =>
        (
            await workshop.PostAsync(
                "people",
                new
                {
                    badge,
                    name = $"Invented {badge}",
                    roles = new[] { "builder" },
                },
                Workshop.Lead
            )
        ).Expect(201);

    private async Task SetAsync(string badge, string code, string newPin, int status) =>
        (
            await workshop.PostAsync(
                "pins",
                new
                {
                    badge,
                    code,
                    newPin,
                },
                null
            )
        ).Expect(status);

    private async Task SignInAsync(string badge, string pin, int status) =>
        (await workshop.PostAsync("sessions", new { badge, pin }, null)).Expect(status);

    private async Task<HttpClient> SessionAsync(string badge)
    {
        var token = (await workshop.PostAsync("sessions", new { badge, pin = Workshop.PinOf(badge) }, null)).Expect(200).Text("token");
        var client = await workshop.ClientAsync(null);
        client.DefaultRequestHeaders.Authorization = new("Bearer", token);
        return client;
    }
}
