namespace Traceability.Web.Tests.Pages;

public sealed class DeskSetupTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_person_a_role_and_a_qualification_by_page_store_the_same_facts_as_by_API()
    {
        var lead = await DeskClient.SignInAsync(workshop, Workshop.Lead);
        var code = (
            await workshop.PostAsync(
                "people",
                new
                {
                    badge = "P1",
                    name = "Pat",
                    roles = new[] { "builder" },
                },
                Workshop.Lead
            )
        ).Expect(201).Text("code");
        var added = (await lead.SendAsync("/setup/people", "add", ("badge", "P2"), ("name", "Pat"), ("roles", "Builder"))).Expect(200);
        Assert.Equal(WithoutHash(await workshop.LastAsync("P1")), WithoutHash(await workshop.LastAsync("P2")));
        (
            await workshop.PostAsync(
                "pins",
                new
                {
                    badge = "P1",
                    code,
                    newPin = "2496",
                },
                null
            )
        ).Expect(200);
        (
            await workshop.PostAsync(
                "pins",
                new
                {
                    badge = "P2",
                    code = CodeOn(added),
                    newPin = "2496",
                },
                null
            )
        ).Expect(200);
        (await workshop.PostAsync("sessions", new { badge = "P2", pin = "2496" }, null)).Expect(200);

        (await workshop.PostAsync("people/P1/roles", new { role = "quality", given = true }, Workshop.Lead)).Expect(200);
        (await lead.SendAsync("/setup/people/P2", "role-Quality")).Expect(200);
        Assert.Equal(await workshop.LastAsync("P1"), await workshop.LastAsync("P2"));
        (
            await workshop.PostAsync(
                "people/P1/qualifications",
                new
                {
                    code = "capsule",
                    given = true,
                    validUntil = "2999-12-31",
                },
                Workshop.Lead
            )
        ).Expect(200);
        (await lead.SendAsync("/setup/people/P2", "qualify", ("code", "capsule"), ("validUntil", "2999-12-31"))).Expect(200);
        Assert.Equal(await workshop.LastAsync("P1"), await workshop.LastAsync("P2"));
        (await workshop.PostAsync("people/P1/qualifications", new { code = "capsule", given = false }, Workshop.Lead)).Expect(200);
        (await lead.SendAsync("/setup/people/P2", "take-capsule")).Expect(200);
        Assert.Equal(await workshop.LastAsync("P1"), await workshop.LastAsync("P2"));
        (await workshop.PostAsync("people/P1/pin-code", new { reason = "forgotten" }, Workshop.Lead)).Expect(201);
        var given = (await lead.SendAsync("/setup/people/P2", "code", ("reason", "forgotten"))).Expect(200);
        Assert.Equal(WithoutHash(await workshop.LastAsync("P1")), WithoutHash(await workshop.LastAsync("P2")));
        (
            await workshop.PostAsync(
                "pins",
                new
                {
                    badge = "P2",
                    code = CodeOn(given),
                    newPin = "135790",
                },
                null
            )
        ).Expect(200);
        (await workshop.PostAsync("sessions", new { badge = "P2", pin = "135790" }, null)).Expect(200);
    }

    [Fact]
    public async Task A_refused_person_keeps_what_was_typed()
    {
        var refused = (
            await (await DeskClient.SignInAsync(workshop, Workshop.Lead)).SendAsync(
                "/setup/people",
                "add",
                ("badge", Workshop.Builder),
                ("name", "A Second"),
                ("roles", "Service")
            )
        ).Expect(409);
        Assert.Contains("value=\"A Second\"", refused.Html, StringComparison.Ordinal);
        Assert.Matches("value=\"Service\" checked", refused.Html);
    }

    [Fact]
    public async Task A_station_by_page_stores_the_same_facts_as_by_API()
    {
        (await workshop.PostAsync("stations", new { code = "ST-A", title = "Bench" }, Workshop.Lead)).Expect(201);
        (
            await (await DeskClient.SignInAsync(workshop, Workshop.Lead)).SendAsync(
                "/setup/stations",
                "add",
                ("code", "ST-B"),
                ("title", "Bench")
            )
        ).Expect(200);
        Assert.Equal(await workshop.LastAsync("ST-A"), await workshop.LastAsync("ST-B"));
    }

    [Fact]
    public async Task A_route_with_mistakes_is_refused_with_their_lines_and_a_good_one_is_loaded()
    {
        var lead = await DeskClient.SignInAsync(workshop, Workshop.Lead);
        var refused = (await lead.SendAsync("/setup/routes", "load", ("text", "model: TEST-1\nkind: tray\ncolour: red\n"))).Expect(400);
        Assert.Contains("line 3", refused.Words, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("colour: red", refused.Html, StringComparison.Ordinal);
        const string tray =
            "model: TEST-1\nkind: tray\ntitle: Tray\nserialPrefix: T\nauthor: L1\napprovedBy: Q1\neffectiveFrom: 2020-01-01\nstages:\n "
            + " - code: look\n    title: Look at it\n    method: entered-limits\n    cautions: [hot-plate]\n";
        var loaded = (await lead.SendAsync("/setup/routes", "load", ("text", tray))).Expect(200);
        Assert.Equal("/setup/routes/TEST-1/tray/1", loaded.Path);
        Assert.Contains("Heated plate: burns", loaded.Words, StringComparison.Ordinal);
        Assert.Contains("Local rules and licensed practice prevail", loaded.Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/setup")]
    [InlineData("/setup/people")]
    [InlineData("/setup/people/B1")]
    [InlineData("/setup/stations")]
    public async Task Set_up_is_for_the_workshop_lead(string path)
    {
        (await (await DeskClient.SignInAsync(workshop, Workshop.Quality)).GetAsync(path)).Expect(403);
        (await (await DeskClient.SignInAsync(workshop, Workshop.Lead)).GetAsync(path)).Expect(200);
    }

    private static string WithoutHash(string ledger) =>
        System.Text.RegularExpressions.Regex.Replace(ledger, "\"(hash|expiresAt)\":\"[^\"]+\"", "HASH");

    private static string CodeOn(DeskClient.Sheet page) =>
        System.Text.RegularExpressions.Regex.Match(page.Html, "<code class=\"figure\">([A-Z-]+)</code>").Groups[1].Value;
}
