using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Station;

/// <summary>What has left, came back or was scrapped since is called the same at every door.</summary>
public sealed class StandingAfterShippingTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_shipped_unit_takes_what_is_in_it_along_on_every_page()
    {
        await workshop.FilmAsync("ST-S");
        var (front, rear) = (await workshop.DiaphragmAsync(film: "ST-S"), await workshop.DiaphragmAsync(film: "ST-S"));
        var capsule = await workshop.CapsuleAsync(front, rear);
        var unit = await workshop.ShippedAsync(await workshop.UnitAsync(capsule), "Studio Reed");

        foreach (var serial in new[] { unit, capsule, front })
        {
            var standing = (await workshop.GetAsync($"parts/{serial}")).Expect(200).At("standing");
            Assert.Equal(
                ("shipped", true),
                (standing.Text("code"), standing.Text("where").Contains("Studio Reed", StringComparison.Ordinal))
            );
        }

        Assert.All(await workshop.TracedAsync("ST-S"), code => Assert.Equal("shipped", code));
        Assert.All(
            (await workshop.GetAsync("lots/ST-S/where-used")).Expect(200).List(),
            p => Assert.Equal("shipped", p.Text("standing.code"))
        );
        await workshop.AtTheStationAsync(unit, "shipped", "Studio Reed");
        Assert.Contains(
            "shipped",
            (await workshop.GetAsync($"search?q={unit}", Workshop.ServiceDesk)).Expect(200).List()[0].Text("words"),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_unit_that_came_back_is_returned_everywhere_and_keeps_customer_and_day_on_its_page()
    {
        await workshop.FilmAsync("ST-R");
        var (front, rear) = (await workshop.DiaphragmAsync(film: "ST-R"), await workshop.DiaphragmAsync(film: "ST-R"));
        var unit = await workshop.ShippedAsync(await workshop.UnitAsync(await workshop.CapsuleAsync(front, rear)), "Studio Heath");
        var back = (await workshop.PostAsync("returns", new { serial = unit, complaint = "hums at night" }, Workshop.ServiceDesk)).Expect(
            201
        );
        Assert.Equal(("finished", "returned"), (back.Text("part.state"), back.Text("part.standing.code")));

        Assert.Equal("returned", await workshop.CodeAsync(unit));
        Assert.Equal("returned", await workshop.InListAsync("kind=unit&state=finished", unit));
        Assert.DoesNotContain(unit, (await workshop.GetAsync("parts?kind=unit&free=true&limit=500")).Expect(200).Texts("items", "serial"));
        var traced = (await workshop.GetAsync("quality/trace?what=lot&code=ST-R")).Expect(200).List();
        Assert.All(traced, p => Assert.Equal(("returned", "returned"), (p.Text("where"), p.Text("standing.code"))));
        var quality = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        foreach (var page in new[] { $"/parts/{unit}", $"/parts/{unit}/certificate" })
        {
            var words = (await quality.GetAsync(page)).Expect(200).Words;
            Assert.Contains("returned", words, StringComparison.Ordinal);
            Assert.Contains("Studio Heath", words, StringComparison.Ordinal);
            Assert.Contains("hums at night", words, StringComparison.Ordinal);
        }

        Assert.Contains("returned", (await quality.GetAsync("/quality/film-lots/ST-R")).Expect(200).Words, StringComparison.Ordinal);
        Assert.Contains(
            "returned",
            (await (await DeskClient.SignInAsync(workshop, Workshop.ServiceDesk)).GetAsync("/returns")).Expect(200).Words,
            StringComparison.Ordinal
        );
        await workshop.AtTheStationAsync(unit, "returned", "hums at night");
    }

    [Fact]
    public async Task A_diaphragm_scrapped_after_its_unit_had_left_without_it_is_scrapped_on_the_film_lots_page_as_in_its_trace()
    {
        await workshop.FilmAsync("ST-X");
        var (front, rear) = (await workshop.DiaphragmAsync(film: "ST-X"), await workshop.DiaphragmAsync(film: "ST-X"));
        var capsule = await workshop.CapsuleAsync(front, rear);
        var unit = await workshop.UnitAsync(capsule);
        (await workshop.PostAsync($"parts/{unit}/removals", new { position = "capsule", reason = "crackles" })).Expect(201);
        var other = await workshop.CapsuleAsync();
        await workshop.RecordAsync(unit, "assemble", new { fittings = new[] { new { position = "capsule", child = other } } });
        await workshop.RecordAsync(
            unit,
            "final-acoustic",
            new
            {
                instruments = new[] { "AN-1" },
                readings = new[] { new { characteristic = "sensitivityCardioidMvPa", value = "14.20" } },
                evidence = new[]
                {
                    new
                    {
                        name = "cardioid",
                        mediaType = "text/csv",
                        text = Workshop.FlatResponse,
                    },
                },
            }
        );
        await workshop.RecordAsync(
            unit,
            "inspection",
            new { readings = new[] { new { characteristic = "surfaceFaults", value = 0 } } },
            Workshop.OtherBuilder
        );
        await workshop.ShippedAsync(unit, "Studio Fen");
        var raised = (await workshop.PostAsync($"parts/{capsule}/nonconformities", new { code = "cracked", description = "cracked" }))
            .Expect(201)
            .Id();
        (
            await workshop.PostAsync(
                $"nonconformities/{raised}/disposition",
                new
                {
                    kind = "scrap",
                    reason = "cracked through",
                    pin = Workshop.PinOf(Workshop.Quality),
                },
                Workshop.Quality
            )
        ).Expect(201);

        Assert.Equal("scrapped", await workshop.CodeAsync(front));
        var listed = (await workshop.GetAsync("quality/film-lots/ST-X/parts")).Expect(200).List().Single(p => p.Text("serial") == front);
        Assert.Equal(("scrapped", unit), (listed.Text("standing.code"), listed.Text("unit")));
        var traced = (await workshop.GetAsync("quality/trace?what=lot&code=ST-X"))
            .Expect(200)
            .List()
            .Single(p => p.Text("serial") == front);
        Assert.Equal(("scrapped", "scrapped"), (traced.Text("where"), traced.Text("standing.code")));
        await workshop.AtTheStationAsync(capsule, "scrapped", "cracked through");
    }
}
