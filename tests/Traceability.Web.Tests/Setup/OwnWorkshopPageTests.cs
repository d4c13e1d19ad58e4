using System.Text;
using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Setup;

/// <summary>The workshop's page as its lead uses it.</summary>
public sealed class OwnWorkshopPageTests : IAsyncLifetime
{
    private const string Logo = """<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"><circle cx="20" cy="10" r="8"/></svg>""";

    private readonly Workshop workshop = new() { Settings = { ["TRACEABILITY_TIMEZONE"] = "Europe/Berlin" } };

    public Task InitializeAsync() => workshop.InitializeAsync();

    public Task DisposeAsync() => workshop.DisposeAsync();

    [Fact]
    public async Task What_the_page_saves_holds_and_what_was_set_at_the_start_is_said_at_its_field()
    {
        var lead = await DeskClient.SignInAsync(workshop, Workshop.Lead);
        var before = (await lead.GetAsync("/setup/workshop")).Expect(200);
        Assert.Contains(
            "Set at the start of the service by TRACEABILITY_TIMEZONE to “Europe/Berlin”",
            before.Words,
            StringComparison.Ordinal
        );

        var saved = (await SaveAsync(lead, before, ("name", "The Mill"), ("timeZone", "Asia/Tokyo"))).Expect(200);
        Assert.Contains("revision 1", saved.Words, StringComparison.Ordinal);
        var now = (await workshop.GetAsync("workshop")).Expect(200);
        Assert.Equal(("The Mill", "Europe/Berlin"), (now.Text("name"), now.Text("timeZone")));
        Assert.Equal("timeZone", now.List("overrides").Single(o => o.Text("setting") == "TRACEABILITY_TIMEZONE").Text("field"));
    }

    [Fact]
    public async Task Two_who_edit_at_once_see_what_the_other_said_and_lose_nothing_that_they_typed()
    {
        var (one, other) = (await DeskClient.SignInAsync(workshop, Workshop.Lead), await DeskClient.SignInAsync(workshop, Workshop.Lead));
        var (first, second) = (await one.GetAsync("/setup/workshop"), await other.GetAsync("/setup/workshop"));
        (await SaveAsync(one, first, ("name", "The first name"))).Expect(200);

        var refused = (await SaveAsync(other, second, ("name", "The second name"))).Expect(409);
        Assert.Contains("Somebody else changed the workshop meanwhile", refused.Words, StringComparison.Ordinal);
        Assert.Contains("The first name", refused.Words, StringComparison.Ordinal);
        Assert.Contains("value=\"The second name\"", refused.Html, StringComparison.Ordinal);

        (await SaveAsync(other, refused, ("name", "The second name"))).Expect(200);
        Assert.Equal("The second name", (await workshop.GetAsync("workshop")).Expect(200).Text("name"));
    }

    [Fact]
    public async Task A_logo_is_taken_shown_and_taken_away_and_one_with_a_script_is_refused_with_the_reason()
    {
        await workshop.SayAsync("The Mill");
        (await SendLogoAsync(Logo)).Expect(201);
        Assert.Equal(Logo, (await workshop.GetAsync("workshop/logo")).Body);
        var lead = await DeskClient.SignInAsync(workshop, Workshop.Lead);
        Assert.Contains("/api/v1/workshop/logo", (await lead.GetAsync("/setup/workshop")).Html, StringComparison.Ordinal);

        var bad = Logo.Replace("<circle", "<script>1</script><circle", StringComparison.Ordinal);
        Assert.Contains("something that runs ('script')", (await SendLogoAsync(bad)).Problem(400), StringComparison.Ordinal);
        Assert.Contains("at most 1 MB", (await SendLogoAsync(new string(' ', 1_000_001))).Problem(413), StringComparison.Ordinal);
        Assert.Equal(Logo, (await workshop.GetAsync("workshop/logo")).Body);

        (await lead.SendAsync("/setup/workshop", "no-logo")).Expect(200);
        (await workshop.GetAsync("workshop/logo")).Problem(404);
    }

    private Task<Reply> SendLogoAsync(string svg) =>
        workshop.PostAsync("workshop/logo", new StringContent(svg, Encoding.UTF8, "image/svg+xml"), Workshop.Lead);

    private static Task<DeskClient.Sheet> SaveAsync(DeskClient lead, DeskClient.Sheet page, params (string, string)[] typed) =>
        lead.SendAsync(
            page,
            "workshop",
            [
                ("timeZone", "UTC"),
                ("language", "en"),
                ("suppliers", "false"),
                ("lotNumbers", "false"),
                ("reworks", "false"),
                ("namesOnCertificates", "Full"),
                ("singleHanded", "false"),
                .. typed,
            ]
        );
}
