namespace Traceability.Web.Tests.Pages;

public sealed class DeskPartTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_part_tells_its_life_from_top_to_bottom()
    {
        var serial = await workshop.CapsuleAsync();
        var page = (await (await DeskClient.SignInAsync(workshop, Workshop.ServiceDesk)).GetAsync($"/parts/{serial}")).Expect(200);
        foreach (
            var said in new[]
            {
                serial,
                "finished",
                "Stack",
                "Capacitance",
                "70.50",
                "60 to 80 pF",
                Workshop.Ring,
                Workshop.Film,
                "Bea Builder",
                "BENCH-1",
                "History",
            }
        )
        {
            Assert.Contains(said, page.Words, StringComparison.Ordinal);
        }

        Assert.DoesNotContain("Correct this", page.Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_carrier_leads_to_the_part_in_it_and_an_unknown_serial_to_404()
    {
        var serial = await workshop.RegisterAsync("diaphragm", "JIG-77");
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        Assert.Equal($"/parts/{serial}", (await desk.GetAsync("/parts/jig-77")).Expect(200).Path);
        (await desk.GetAsync("/parts/NOBODY-1")).Expect(404);
    }

    [Fact]
    public async Task As_of_a_day_before_it_was_made_a_part_has_no_history()
    {
        var serial = await workshop.MountAsync();
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        var then = (await desk.GetAsync($"/parts/{serial}?asOf=2020-01-01")).Expect(200);
        Assert.DoesNotContain("Coarse resonance", then.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("Report a nonconformity", then.Words, StringComparison.Ordinal);
        Assert.Contains("Coarse resonance", (await desk.GetAsync($"/parts/{serial}?asOf=2999-01-01")).Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_correction_by_page_stores_the_same_facts_as_by_API()
    {
        var (byApi, byPage) = (await VerifiedAsync(), await VerifiedAsync());
        (await workshop.PostAsync($"readings/{byApi.Reading}/corrections", new { value = "905.50", reason = "digits swapped" })).Expect(
            201
        );
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Builder);
        var after = (
            await desk.SendAsync($"/parts/{byPage.Serial}", $"correct-{byPage.Reading}", ("value", "905.50"), ("reason", "digits swapped"))
        ).Expect(200);
        Assert.Contains("was 900; corrected to 905.50 by Bea Builder", after.Words, StringComparison.Ordinal);
        Assert.Equal(await workshop.LastAsync(byApi.Serial), await workshop.LastAsync(byPage.Serial));
    }

    [Fact]
    public async Task A_nonconformity_by_page_stores_the_same_facts_as_by_API()
    {
        var (byApi, byPage) = (await workshop.MountAsync(), await workshop.MountAsync());
        (await workshop.PostAsync($"parts/{byApi}/nonconformities", new { code = "scratched-film", description = "a scratch" })).Expect(
            201
        );
        await (await DeskClient.SignInAsync(workshop, Workshop.Builder)).SendAsync(
            $"/parts/{byPage}",
            "raise",
            ("code", "scratched-film"),
            ("description", "a scratch")
        );
        Assert.Equal(await workshop.LastAsync(byApi), await workshop.LastAsync(byPage));
        Assert.Equal("nonconforming", await workshop.StateOfAsync(byPage));
    }

    [Fact]
    public async Task A_removal_by_page_stores_the_same_facts_as_by_API()
    {
        var (byApi, byPage) = (await workshop.CapsuleAsync(), await workshop.CapsuleAsync());
        (await workshop.PostAsync($"parts/{byApi}/removals", new { position = "rear", reason = "dust" })).Expect(201);
        var after = await (await DeskClient.SignInAsync(workshop, Workshop.ServiceDesk)).SendAsync(
            $"/parts/{byPage}",
            "remove",
            ("position", "rear"),
            ("reason", "dust")
        );
        Assert.Contains("removed", after.Expect(200).Words, StringComparison.Ordinal);
        Assert.Equal(await workshop.LastAsync(byApi), await workshop.LastAsync(byPage));
    }

    [Fact]
    public async Task A_form_sent_twice_records_once()
    {
        var serial = await workshop.MountAsync();
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Builder);
        var page = await desk.GetAsync($"/parts/{serial}");
        var before = await workshop.CommandsAsync(serial);
        for (var i = 0; i < 2; i++)
        {
            (await desk.SendAsync(page, "raise", ("code", "scratched-film"), ("description", "a scratch"))).Expect(200);
        }

        Assert.Equal(before + 1, await workshop.CommandsAsync(serial));
        Assert.Contains(
            "sent before with something else",
            (await desk.SendAsync(page, "raise", ("code", "scratched-film"), ("description", "another"))).Expect(409).Words,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_refusal_is_said_in_place_and_keeps_what_was_typed()
    {
        var (serial, reading) = await VerifiedAsync();
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Builder);
        var refused = (
            await desk.SendAsync($"/parts/{serial}", $"correct-{reading}", ("value", "1,234"), ("reason", "typed \"badly\""))
        ).Expect(400);
        Assert.Contains("Not recorded", refused.Words, StringComparison.Ordinal);
        Assert.Contains("value=\"1,234\"", refused.Html, StringComparison.Ordinal);
        Assert.Contains("value=\"typed &quot;badly&quot;\"", refused.Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_form_without_the_antiforgery_token_or_the_role_is_refused()
    {
        var serial = await workshop.MountAsync();
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Builder);
        var fields = (await desk.GetAsync($"/parts/{serial}")).Form("raise");
        fields["code"] = "scratched-film";
        fields["description"] = "a scratch";
        var lead = await DeskClient.SignInAsync(workshop, Workshop.Lead);
        Assert.DoesNotContain("Report a nonconformity", (await lead.GetAsync($"/parts/{serial}")).Words, StringComparison.Ordinal);
        fields["__RequestVerificationToken"] = (await lead.GetAsync("/sign-out"))
            .Html.Split("__RequestVerificationToken\" type=\"hidden\" value=\"")[1]
            .Split('"')[0];
        Assert.Contains(
            "which do not include this",
            (await lead.PostAsync($"/parts/{serial}?handler=Raise", fields)).Expect(403).Words,
            StringComparison.Ordinal
        );
        fields.Remove("__RequestVerificationToken");
        (await desk.PostAsync($"/parts/{serial}?handler=Raise", fields)).Expect(400);
        Assert.Equal("ready", await workshop.StateOfAsync(serial));
    }

    private async Task<(string Serial, Guid Reading)> VerifiedAsync()
    {
        var serial = await workshop.DiaphragmAsync();
        var history = (await workshop.GetAsync($"parts/{serial}/history")).Expect(200).List();
        return (serial, history.Single(e => e.Text("what") == "reading" && e.Text("reading.characteristic") == "ringHz").Id());
    }
}
