namespace Traceability.Web.Tests.Pages;

public sealed class DeskLotTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_lot_received_by_page_stores_the_same_facts_as_by_API()
    {
        object film = new
        {
            number = "FOIL-A",
            kind = "film",
            supplier = "Invented Films",
            supplierLot = "S-9",
            quantity = 12.5,
            unit = "m",
            film = new { baseThicknessUm = 6, metalThicknessNm = 40 },
        };
        (await workshop.PostAsync("lots", film, Workshop.Quality)).Expect(201);
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        var after = await desk.SendAsync(
            "/lots/new",
            "lot",
            ("number", "FOIL-B"),
            ("kind", "film"),
            ("supplier", "Invented Films"),
            ("supplierLot", "S-9"),
            ("quantity", "12.5"),
            ("unit", "m"),
            ("baseThicknessUm", "6"),
            ("metalThicknessNm", "40"),
            ("confirm", "true")
        );
        Assert.Equal("/lots/FOIL-B", after.Expect(200).Path);
        Assert.Equal(await workshop.LastAsync("FOIL-A"), await workshop.LastAsync("FOIL-B"));
    }

    [Fact]
    public async Task Release_and_quarantine_by_page_store_the_same_facts_as_by_API()
    {
        foreach (var number in new[] { "GLUE-A", "GLUE-B" })
        {
            (
                await workshop.PostAsync(
                    "lots",
                    new
                    {
                        number,
                        kind = "adhesive",
                        supplier = "Invented Glue",
                        supplierLot = "S-1",
                        quantity = 1,
                        unit = "kg",
                    },
                    Workshop.Quality
                )
            ).Expect(201);
        }

        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        foreach (var (decision, form) in new[] { ("release", "release"), ("quarantine", "quarantine") })
        {
            (await workshop.PostAsync($"lots/GLUE-A/{decision}", new { reason = "sample sheared" }, Workshop.Quality)).Expect(200);
            (await desk.SendAsync("/lots/GLUE-B", form, ("reason", "sample sheared"))).Expect(200);
            Assert.Equal(await workshop.LastAsync("GLUE-A"), await workshop.LastAsync("GLUE-B"));
        }
    }

    [Fact]
    public async Task A_film_lot_that_is_stopped_after_its_release_is_shown_as_stopped_in_every_list_of_parts()
    {
        var route = (await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "DemoRoutes", "any-film-lot.yaml")))
            .Replace("LEAD1", Workshop.Lead, StringComparison.Ordinal)
            .Replace("QUAL1", Workshop.Quality, StringComparison.Ordinal);
        await workshop.RouteAsync(route);
        await WorkshopSetUp.LotAsync(workshop, "FOIL-C", "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        async Task<bool> IsShownAsAsync(string word, string page) =>
            (await desk.GetAsync(page)).Expect(200).Html.Split("FOIL-C</a>")[^1].Contains($">{word}</span>", StringComparison.Ordinal);
        string[] pages = ["/parts?kind=film-lot", "/holds/new?part=FOIL-C"];

        Assert.True(await IsShownAsAsync("finished", pages[0]));
        (await workshop.PostAsync("lots/FOIL-C/quarantine", new { reason = "flakes" }, Workshop.Quality)).Expect(200);
        foreach (var page in pages)
        {
            Assert.True(await IsShownAsAsync("quarantined", page), page);
            Assert.False(await IsShownAsAsync("finished", page), page);
        }

        Assert.Equal(
            "film-lot, ANY, quarantined",
            (await workshop.GetAsync("search?q=FOIL-")).Expect(200).List().Single(h => h.Text("what") == "part").Text("words")
        );
        (await workshop.PostAsync("holds", new { lot = "FOIL-C", reason = "flakes" }, Workshop.Quality)).Expect(201);
        Assert.True(await IsShownAsAsync("held", pages[0]));
    }

    [Fact]
    public async Task What_a_lot_is_in_is_told_to_quality_and_service_and_comes_as_CSV()
    {
        var serial = await workshop.MountAsync();
        var desk = await DeskClient.SignInAsync(workshop, Workshop.ServiceDesk);
        Assert.Contains(serial, (await desk.GetAsync($"/lots/{Workshop.Film}")).Expect(200).Words, StringComparison.Ordinal);
        var csv = (await desk.GetAsync($"/lots/{Workshop.Film}?handler=Csv")).Expect(200);
        Assert.StartsWith("serial,kind,model,state", csv.Html, StringComparison.Ordinal);
        Assert.Contains(serial, csv.Html, StringComparison.Ordinal);
        var builder = await DeskClient.SignInAsync(workshop, Workshop.Builder);
        Assert.DoesNotContain(
            "What contains it",
            (await builder.GetAsync($"/lots/{Workshop.Film}")).Expect(200).Words,
            StringComparison.Ordinal
        );
        (await builder.GetAsync($"/lots/{Workshop.Film}?handler=Csv")).Expect(403);
    }

    [Fact]
    public async Task Lots_are_received_and_decided_on_by_those_with_the_role_only()
    {
        var builder = await DeskClient.SignInAsync(workshop, Workshop.Builder);
        (await builder.GetAsync("/lots/new")).Expect(403);
        Assert.DoesNotContain("Put into quarantine", (await builder.GetAsync($"/lots/{Workshop.Film}")).Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_number_or_date_that_cannot_be_read_is_refused_with_everything_kept()
    {
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        var refused = await desk.SendAsync(
            "/lots/new",
            "lot",
            ("kind", "film"),
            ("supplier", "Invented Films"),
            ("supplierLot", "S-9"),
            ("quantity", "a lot"),
            ("unit", "m"),
            ("metalThicknessNm", "NaN")
        );
        Assert.Contains("value=\"a lot\"", refused.Expect(400).Html, StringComparison.Ordinal);
        Assert.Equal(2, refused.Html.Split("class=\"field-error\" id=\"lot-metalThicknessNm").Length);
        refused = await desk.SendAsync(
            "/lots/new",
            "lot",
            ("kind", "glue"),
            ("supplier", "x"),
            ("supplierLot", "y"),
            ("quantity", "1"),
            ("unit", "m"),
            ("expiresOn", "2026-13-45")
        );
        Assert.Contains("cannot be read", refused.Expect(400).Words, StringComparison.Ordinal);
    }
}
