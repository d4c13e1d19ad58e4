using Traceability.Domain.Ledger;

namespace Traceability.Web.Tests.Quality;

public sealed class WhereUsedTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_film_lot_is_found_in_the_diaphragm_the_capsule_and_the_unit()
    {
        var (front, rear, capsule, unit) = await UnitOfOneFilmAsync("FILM-A");
        var uses = (await workshop.GetAsync("lots/film-a/where-used")).Expect(200);
        Assert.Equal(new[] { front, rear, capsule, unit }.Order(), uses.Texts("items", "serial").Order());
        var inUnit = uses.List().Single(u => u.Text("serial") == unit);
        Assert.Equal(
            ("unit", "finished", "True", "2"),
            (inUnit.Text("kind"), inUnit.Text("state"), inUnit.Text("present"), inUnit.Text("times"))
        );
    }

    [Fact]
    public async Task A_unit_from_which_the_capsule_was_taken_is_listed_as_removed_and_was_present_before()
    {
        var (_, _, _, unit) = await UnitOfOneFilmAsync("FILM-B");
        var before = workshop.Clock.GetUtcNow();
        workshop.Clock.Pass(TimeSpan.FromMinutes(5));
        (await workshop.PostAsync($"parts/{unit}/removals", new { position = "capsule", reason = "swap" })).Expect(201);
        var now = (await workshop.GetAsync("lots/FILM-B/where-used")).Expect(200).List().Single(u => u.Text("serial") == unit);
        Assert.Equal("False", now.Text("present"));
        var then = (await workshop.GetAsync($"lots/FILM-B/where-used?at={before:yyyy-MM-ddTHH:mm:ss.fffffffZ}")).Expect(200);
        Assert.Contains(unit, then.Texts("items", "serial"));
        var later = (
            await workshop.GetAsync($"lots/FILM-B/where-used?at={workshop.Clock.GetUtcNow().AddMinutes(1):yyyy-MM-ddTHH:mm:ssZ}")
        ).Expect(200);
        Assert.DoesNotContain(unit, later.Texts("items", "serial"));
    }

    [Fact]
    public async Task The_list_is_complete_as_csv_even_without_a_limit()
    {
        await WorkshopSetUp.LotAsync(workshop, "FILM-MANY", "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        for (var i = 0; i < 51; i++)
        {
            await workshop.MountAsync("FILM-MANY");
        }

        Assert.Equal(50, (await workshop.GetAsync("lots/FILM-MANY/where-used")).Expect(200).List().Count);
        var request = new HttpRequestMessage(HttpMethod.Get, "/api/v1/lots/FILM-MANY/where-used");
        request.Headers.Accept.Add(new("text/csv"));
        var csv = (await workshop.SendAsync(request, Workshop.ServiceDesk)).Body;
        Assert.Equal(1 + 51, csv.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Length);
    }

    [Fact]
    public async Task Only_quality_and_service_ask_and_only_about_lots_that_exist()
    {
        (await workshop.GetAsync("lots/NOTHING/where-used")).Expect(404);
        (await workshop.GetAsync($"lots/{Workshop.Film}/where-used", Workshop.Builder)).Expect(403);
    }

    [Fact]
    public async Task The_ledger_of_a_part_is_a_chain_that_anybody_can_recompute()
    {
        var serial = await workshop.DiaphragmAsync();
        var entries = (await workshop.GetAsync($"ledger/{serial}")).Expect(200).List();
        Assert.Equal(Enumerable.Range(1, entries.Count).Select(i => $"{i}"), entries.Select(e => e.Text("sequence")));
        var previous = Digest.FromHex(new string('0', 64));
        foreach (var entry in entries)
        {
            Assert.Equal(previous.ToString(), entry.Text("previousHash"));
            previous = HashChain.Append(previous, System.Text.Json.Nodes.JsonNode.Parse(entry.Text("body"))!);
            Assert.Equal(previous.ToString(), entry.Text("hash"));
        }

        (await workshop.GetAsync("ledger/NOBODY")).Expect(404);
        (await workshop.GetAsync($"ledger/{serial}", Workshop.Builder)).Expect(403);
        Assert.Equal(
            "2",
            (await workshop.GetAsync($"ledger/{serial}?limit=1&cursor={Convert.ToHexString("1"u8)}")).Expect(200).List()[0].Text("sequence")
        );
    }

    private async Task<(string Front, string Rear, string Capsule, string Unit)> UnitOfOneFilmAsync(string film)
    {
        await WorkshopSetUp.LotAsync(workshop, film, "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        var (front, rear) = (await workshop.DiaphragmAsync(film: film), await workshop.DiaphragmAsync(film: film));
        var capsule = await workshop.CapsuleAsync(front, rear);
        return (front, rear, capsule, await workshop.UnitAsync(capsule));
    }
}
