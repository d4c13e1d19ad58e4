using System.Net;
using System.Net.Http.Json;
using System.Text.RegularExpressions;
using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Misuse;

public sealed partial class SignInMisuseTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Theory]
    [InlineData("no-token")]
    [InlineData("")]
    public async Task A_token_that_is_none_is_not_signed_in(string token)
    {
        using var client = await workshop.ClientAsync(null);
        client.DefaultRequestHeaders.TryAddWithoutValidation("Authorization", $"Bearer {token}");
        using var answer = await client.GetAsync(new Uri("/api/v1/stations", UriKind.Relative));
        Assert.Equal(401, (int)answer.StatusCode);
        Assert.Contains("Nothing was recorded", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("holds", Workshop.Builder)]
    [InlineData("lots", Workshop.Builder)]
    [InlineData("lots/FILM-1/release", Workshop.Builder)]
    [InlineData("lots/FILM-1/quarantine", Workshop.ServiceDesk)]
    [InlineData("people", Workshop.Quality)]
    [InlineData("people/B1/roles", Workshop.Quality)]
    [InlineData("people/B1/pin-code", Workshop.Builder)]
    [InlineData("stations", Workshop.Builder)]
    [InlineData("instruments", Workshop.Builder)]
    [InlineData("instruments/RB-1/calibrations", Workshop.Builder)]
    [InlineData("routes", Workshop.Quality)]
    [InlineData("parts", Workshop.Quality)]
    [InlineData("parts", Workshop.ServiceDesk)]
    [InlineData("parts/X/records", Workshop.ServiceDesk)]
    [InlineData("parts/X/records", Workshop.Machine)]
    [InlineData("parts/X/attempts", Workshop.Machine)]
    [InlineData("parts/X/removals", Workshop.Quality)]
    [InlineData("parts/X/shipments", Workshop.Builder)]
    [InlineData("loads", Workshop.Machine)]
    [InlineData("nonconformities/01a21216-97a8-7a6a-82b9-c4b3f8daa674/disposition", Workshop.Lead)]
    public async Task What_is_not_for_a_role_is_refused_with_the_roles_that_one_has(string path, string badge)
    {
        await using var door = BackDoor.Of(workshop);
        await door.UntouchedByAsync(async () =>
            Assert.Contains("has the roles", (await workshop.PostAsync(path, new { }, badge)).Problem(403), StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task A_badge_is_locked_after_five_wrong_pins_for_the_right_one_too()
    {
        Task<Reply> SignIn(string pin) => workshop.PostAsync("sessions", new { badge = Workshop.Machine, pin }, null);
        for (var i = 0; i < 5; i++)
        {
            Assert.Contains("do not belong together", (await SignIn("0000")).Problem(401), StringComparison.Ordinal);
        }

        Assert.Contains("opens again at", (await SignIn(Workshop.PinOf(Workshop.Machine))).Problem(429), StringComparison.Ordinal);
        workshop.Clock.Pass(TimeSpan.FromMinutes(6));
        (await SignIn(Workshop.PinOf(Workshop.Machine))).Expect(200);
    }

    [Fact]
    public async Task A_badge_that_nobody_has_is_refused_and_locked_like_any_other()
    {
        Task<Reply> SignIn() => workshop.PostAsync("sessions", new { badge = "GHOST", pin = "0000" }, null);
        for (var i = 0; i < 5; i++)
        {
            (await SignIn()).Expect(401);
        }

        (await SignIn()).Expect(429);
    }

    [Fact]
    public async Task A_wrong_pin_does_not_sign_a_decision()
    {
        var raised = (
            await workshop.PostAsync($"parts/{await workshop.MountAsync()}/nonconformities", new { code = "bent", description = "bent" })
        )
            .Expect(201)
            .Id();
        await using var door = BackDoor.Of(workshop);
        await door.UntouchedByAsync(async () =>
            Assert.Contains(
                "is not the PIN of Quinn Quality",
                (
                    await workshop.PostAsync(
                        $"nonconformities/{raised}/disposition",
                        new
                        {
                            kind = "scrap",
                            reason = "bent",
                            pin = Workshop.PinOf(Workshop.Lead),
                        },
                        Workshop.Quality
                    )
                ).Problem(403),
                StringComparison.Ordinal
            )
        );
    }

    [Fact]
    public async Task A_session_ends_after_a_working_day()
    {
        var other = new Workshop();
        await other.InitializeAsync();
        using (var client = await other.ClientAsync(Workshop.Quality))
        {
            Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("/api/v1/stations")).StatusCode);
            other.Clock.Pass(TimeSpan.FromHours(12.1));
            Assert.Equal(HttpStatusCode.Unauthorized, (await client.GetAsync("/api/v1/stations")).StatusCode);
        }

        await other.DisposeAsync();
    }

    [Fact]
    public async Task A_write_by_cookie_needs_the_pages_own_token()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        using var signedIn = await workshop.ClientAsync(Workshop.Quality);
        using var browser = await workshop.ClientAsync(null);
        browser.DefaultRequestHeaders.Add("Cookie", $"workshop-session={signedIn.DefaultRequestHeaders.Authorization!.Parameter}");
        var holds = new Uri("/api/v1/holds", UriKind.Relative);
        await using var door = BackDoor.Of(workshop);
        await door.UntouchedByAsync(async () =>
        {
            using var refused = await browser.PostAsJsonAsync(holds, new { part = serial, reason = "from elsewhere" });
            Assert.Equal(400, (int)refused.StatusCode);
            Assert.Contains("antiforgery token", await refused.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        });

        using var page = await browser.GetAsync(new Uri("/", UriKind.Relative));
        var token = FormToken().Match(await page.Content.ReadAsStringAsync()).Groups[1].Value;
        browser.DefaultRequestHeaders.Add("RequestVerificationToken", token);
        using var taken = await browser.PostAsJsonAsync(holds, new { part = serial, reason = "from our own page" });
        Assert.True(taken.StatusCode == System.Net.HttpStatusCode.Created, $"{token}: {await taken.Content.ReadAsStringAsync()}");
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" type=\"hidden\" value=\"([^\"]+)\"")]
    private static partial Regex FormToken();
}
