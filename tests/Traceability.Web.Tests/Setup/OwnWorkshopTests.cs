using System.Text.Json;
using Traceability.Web.Tests.Quality;

namespace Traceability.Web.Tests.Setup;

/// <summary>What the workshop says about itself: revisions, who made them, and what is refused.</summary>
public sealed class OwnWorkshopTests : IAsyncLifetime
{
    private readonly Workshop workshop = new() { Settings = { ["TRACEABILITY_PUBLIC_URL"] = "" } };

    public Task InitializeAsync() => workshop.InitializeAsync();

    public Task DisposeAsync() => workshop.DisposeAsync();

    [Fact]
    public async Task A_revision_is_said_with_its_author_and_what_it_changed()
    {
        Assert.Equal(0, (await workshop.GetAsync("workshop")).Expect(200).At("revision").GetInt32());
        await workshop.SayAsync(name: "The Mill");
        await workshop.SayAsync(name: "The Lower Mill Workshop", reason: "the right name");

        var now = (await workshop.GetAsync("workshop", Workshop.Builder)).Expect(200);
        Assert.Equal(2, now.At("revision").GetInt32());
        Assert.Equal("The Lower Mill Workshop", now.Text("name"));
        Assert.Equal(Workshop.Lead, now.At("by").Text("badge"));
        var history = (await workshop.GetAsync("workshop/revisions")).Expect(200).List();
        Assert.Equal(2, history.Count);
        var change = Assert.Single(history[0].List("changes"));
        Assert.Equal(("name", "The Mill"), (change.Text("field"), change.Text("was")));
        Assert.Equal("the right name", history[0].Text("reason"));
    }

    [Fact]
    public async Task The_same_said_again_is_no_further_revision()
    {
        await workshop.SayAsync(name: "The Mill");
        await workshop.SayAsync(name: "The Mill");
        Assert.Equal(1, (await workshop.GetAsync("workshop")).Expect(200).At("revision").GetInt32());
    }

    [Theory]
    [InlineData("timeZone", "Mars/Olympus_Mons", "there is no time zone")]
    [InlineData("timeZone", "W. Europe Standard Time", "there is no time zone")]
    [InlineData("publicUrl", "http://localhost:5080", "leads nobody outside")]
    [InlineData("language", "tlh", "no language that this version has words for")]
    [InlineData("name", " ", "1 to 120 characters")]
    public async Task What_cannot_hold_is_refused_at_its_field_and_nothing_is_recorded(string field, string value, string said)
    {
        var body = OwnWorkshop.Body();
        body[field] = value;
        var refused = (await workshop.PostAsync("workshop", body, Workshop.Lead)).Expect(400);
        Assert.Contains(said, refused.At("errors").GetProperty(field)[0].GetString(), StringComparison.Ordinal);
        Assert.Equal(0, (await workshop.GetAsync("workshop")).Expect(200).At("revision").GetInt32());
    }

    [Fact]
    public async Task Every_wrong_field_is_said_at_once()
    {
        var body = OwnWorkshop.Body();
        (body["name"], body["timeZone"], body["publicUrl"]) = ("", "Nowhere", "nonsense");
        var refused = (await workshop.PostAsync("workshop", body, Workshop.Lead)).Expect(400);
        Assert.Equal(3, refused.At("errors").EnumerateObject().Count());
    }

    [Fact]
    public async Task Only_the_lead_says_what_the_workshop_is() =>
        (await workshop.PostAsync("workshop", OwnWorkshop.Body(), Workshop.Quality)).Problem(403);

    [Fact]
    public async Task Of_two_who_change_it_at_once_the_second_is_told_and_nothing_of_the_first_is_lost()
    {
        await workshop.SayAsync(name: "The Mill");
        var body = OwnWorkshop.Body("Another Mill");
        body["basedOn"] = 0;
        var refused = (await workshop.PostAsync("workshop", body, Workshop.Lead)).Expect(409);
        Assert.Equal("/problems/changed-meanwhile", refused.Text("type"));
        Assert.Equal("The Mill", (await workshop.GetAsync("workshop")).Expect(200).Text("name"));
    }

    [Fact]
    public async Task Without_a_public_address_no_certificate_is_issued_and_with_one_from_the_page_it_is()
    {
        var unit = await workshop.UnitAsync();
        var refused = (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(409);
        Assert.Equal("/problems/public-address-missing", refused.Text("type"));
        Assert.Contains("/setup/workshop", refused.Text("detail"), StringComparison.Ordinal);

        await workshop.SayAsync(name: "The Mill", publicUrl: "https://mill.example/");
        var issued = await workshop.IssueAsync(unit);
        Assert.StartsWith("https://mill.example/verify/", issued.Text("verifyAddress"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_certificate_keeps_what_held_when_it_was_issued()
    {
        await workshop.SayAsync("The Mill", "https://mill.example", "Mill Lane 4\nLower Mill", "Europe/Berlin");
        var unit = await workshop.UnitAsync();
        await workshop.IssueAsync(unit);
        var (twin, pdf) = (await FileAsync(unit, 1, "json"), await FileAsync(unit, 1, "pdf"));
        await workshop.SayAsync("Another Name", "https://other.example", "Elsewhere", "Asia/Tokyo");

        Assert.Equal(twin, await FileAsync(unit, 1, "json"));
        Assert.Equal(pdf, await FileAsync(unit, 1, "pdf"));
        var words = Certifying.TextOf(pdf);
        Assert.All(
            new[] { "The Mill", "Mill Lane 4", "Lower Mill", "Europe/Berlin" },
            said => Assert.Contains(said, words, StringComparison.Ordinal)
        );
        Assert.Equal("Europe/Berlin", JsonSerializer.Deserialize<JsonElement>(twin).Text("timeZone"));

        await workshop.IssueAsync(unit);
        Assert.Contains("Another Name", Certifying.TextOf(await FileAsync(unit, 2, "pdf")), StringComparison.Ordinal);
    }

    private Task<byte[]> FileAsync(string unit, int revision, string form) =>
        workshop.BytesAsync($"parts/{unit}/certificates/{revision}.{form}");
}
