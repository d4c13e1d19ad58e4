namespace Traceability.Web.Tests.Pages;

public sealed class DeskNonconformityTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Theory]
    [InlineData("Rework", "mount", "")]
    [InlineData("Repair", "mount", "")]
    [InlineData("Concession", null, "the demonstration room")]
    [InlineData("Regrade", null, "second choice")]
    [InlineData("Scrap", null, "")]
    public async Task A_decision_by_page_stores_the_same_facts_as_by_API(string kind, string? returnTo, string limitedTo)
    {
        var (byApi, byPage) = (await RaisedAsync(), await RaisedAsync());
        var pin = Workshop.PinOf(Workshop.Quality);
        object decision =
            limitedTo == ""
                ? new
                {
                    kind = kind.ToLowerInvariant(),
                    returnTo,
                    reason = "seen together",
                    pin,
                }
                : new
                {
                    kind = kind.ToLowerInvariant(),
                    limitedTo,
                    reason = "seen together",
                    pin,
                };
        (await workshop.PostAsync($"nonconformities/{byApi.Id}/disposition", decision, Workshop.Quality)).Expect(201);
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        (string, string)[] typed =
        [
            ("reason", "seen together"),
            ("_Pin", pin),
            .. limitedTo == "" ? [] : new[] { ("limitedTo", limitedTo) },
        ];
        var after = await desk.SendAsync($"/nonconformities/{byPage.Id}?kind={kind}&returnTo={returnTo}", "decide", typed);
        Assert.Equal($"/parts/{byPage.Serial}", after.Expect(200).Path);
        Assert.Equal(await workshop.LastAsync(byApi.Serial), await workshop.LastAsync(byPage.Serial));
    }

    [Fact]
    public async Task The_page_says_what_a_decision_will_touch_before_it_is_made()
    {
        var (serial, id) = await RaisedAsync();
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        var before = await workshop.CommandsAsync(serial);
        var rework = (await desk.GetAsync($"/nonconformities/{id}?kind=Rework&returnTo=mount")).Expect(200).Words;
        Assert.Contains("To be done again although passed: Mount.", rework, StringComparison.Ordinal);
        Assert.Contains("Next stage: Mount.", rework, StringComparison.Ordinal);
        Assert.Contains("scrapped", (await desk.GetAsync($"/nonconformities/{id}?kind=Scrap")).Words, StringComparison.Ordinal);
        Assert.Equal(before, await workshop.CommandsAsync(serial));
    }

    [Fact]
    public async Task Whoever_built_the_part_is_told_that_somebody_else_must_decide_the_concession()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        await workshop.RecordAsync(
            serial,
            "mount",
            new
            {
                readings = new[] { new { characteristic = "coarseHz", value = 1101 } },
                fittings = new[] { new { position = "film", lot = Workshop.Film } },
            },
            Workshop.Importer
        );
        var id = (await workshop.GetAsync("nonconformities?open=true")).Expect(200).List().First(n => n.Text("serial") == serial).Id();
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Importer);
        Assert.Contains(
            "somebody else must",
            (await desk.GetAsync($"/nonconformities/{id}?kind=Concession")).Expect(200).Words,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_wrong_PIN_signs_nothing_and_is_not_shown_again()
    {
        var (serial, id) = await RaisedAsync();
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        var refused = (await desk.SendAsync($"/nonconformities/{id}?kind=Scrap", "decide", ("reason", "torn"), ("_Pin", "986532"))).Expect(
            403
        );
        Assert.Contains("this is not the PIN of Quinn Quality", refused.Words, StringComparison.Ordinal);
        Assert.Contains(">torn</textarea>", refused.Html, StringComparison.Ordinal);
        Assert.DoesNotContain("986532", refused.Html, StringComparison.Ordinal);
        Assert.Equal("nonconforming", await workshop.StateOfAsync(serial));
    }

    [Fact]
    public async Task The_queue_shows_the_oldest_first_and_builders_cannot_decide()
    {
        var (first, id) = await RaisedAsync();
        var (second, _) = await RaisedAsync();
        var queue = (await (await DeskClient.SignInAsync(workshop, Workshop.Quality)).GetAsync("/nonconformities")).Expect(200).Words;
        Assert.InRange(queue.IndexOf(first, StringComparison.Ordinal), 0, queue.IndexOf(second, StringComparison.Ordinal));
        var builder = (
            await (await DeskClient.SignInAsync(workshop, Workshop.Builder)).GetAsync($"/nonconformities/{id}?kind=Scrap")
        ).Expect(200);
        Assert.Contains("The quality lead decides", builder.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("_Pin", builder.Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task People_read_the_labels_of_the_route_and_not_the_names_for_programs()
    {
        var serial = await workshop.DiaphragmAsync(929);
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        foreach (var path in new[] { "/nonconformities?limit=500", $"/parts/{serial}" })
        {
            var words = (await desk.GetAsync(path)).Expect(200).Words;
            Assert.Contains("Resonance on the ring 929 Hz is outside 880 to 920 Hz", words, StringComparison.Ordinal);
            Assert.DoesNotContain("ringHz", words, StringComparison.Ordinal);
        }
    }

    private async Task<(string Serial, Guid Id)> RaisedAsync()
    {
        var serial = await workshop.MountAsync();
        return (
            serial,
            (await workshop.PostAsync($"parts/{serial}/nonconformities", new { code = "scratched-film", description = "a scratch" }))
                .Expect(201)
                .Id()
        );
    }
}
