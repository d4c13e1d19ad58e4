using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Station;

/// <summary>
/// What a part is now is said by one function: every door gives the same answer, and nothing that may not go on looks fit to.
/// </summary>
public sealed class StandingTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_quarantined_film_lot_is_nowhere_called_finished()
    {
        const string Route = """
            model: ANY
            kind: film-lot
            revision: 1
            title: Film lot
            serialPrefix: FL
            author: L1
            approvedBy: Q1
            effectiveFrom: 2020-01-01
            stages:
              - {code: receipt, title: Receipt, method: entered-limits}
              - {code: release, title: Release, method: entered-limits}
            """;
        await workshop.RouteAsync(Route);
        await FilmAsync("ST-Q");
        Assert.Equal("finished", await CodeAsync("ST-Q"));
        (await workshop.PostAsync("lots/ST-Q/quarantine", new { reason = "pinholes seen" }, Workshop.Quality)).Expect(200);

        var standing = (await workshop.GetAsync("parts/ST-Q")).Expect(200).At("standing");
        Assert.Equal(("quarantined", "pinholes seen"), (standing.Text("code"), standing.Text("because")));
        Assert.Equal("quarantined", await InListAsync("kind=film-lot", "ST-Q"));
        Assert.DoesNotContain("ST-Q", (await workshop.GetAsync("parts?kind=film-lot&free=true")).Expect(200).Texts("items", "serial"));
        await AtTheStationAsync("ST-Q", "quarantined", "pinholes seen");
    }

    [Fact]
    public async Task What_holds_film_of_a_lot_in_quarantine_or_on_hold_is_quarantined_or_held_itself()
    {
        await FilmAsync("ST-H");
        var (front, rear) = (await workshop.DiaphragmAsync(film: "ST-H"), await workshop.DiaphragmAsync(film: "ST-H"));
        var capsule = await workshop.CapsuleAsync(front, rear);
        (await workshop.PostAsync("lots/ST-H/quarantine", new { reason = "curls" }, Workshop.Quality)).Expect(200);
        Assert.Equal(("quarantined", "quarantined"), (await CodeAsync(front), await CodeAsync(capsule)));

        var hold = (await workshop.PostAsync("holds", new { lot = "ST-H", reason = "pinholes" }, Workshop.Quality)).Expect(201).Id();
        Assert.Equal(("held", "held"), (await CodeAsync(front), await CodeAsync(capsule)));
        Assert.Contains(
            "pinholes",
            (await workshop.GetAsync($"parts/{capsule}")).Expect(200).Text("standing.because"),
            StringComparison.Ordinal
        );
        Assert.All(await TracedAsync("ST-H"), code => Assert.Equal("held", code));
        await AtTheStationAsync(capsule, "held", "pinholes");

        (await workshop.PostAsync($"holds/{hold}/release", new { reason = "looked at" }, Workshop.Quality)).Expect(201);
        Assert.Equal("quarantined", await CodeAsync(capsule));
    }

    [Fact]
    public async Task A_finished_part_is_free_a_finished_unit_in_stock_and_a_fitted_part_in_what_holds_it()
    {
        var capsule = await workshop.CapsuleAsync();
        Assert.Equal("finished", await CodeAsync(capsule));
        var unit = await workshop.UnitAsync(capsule);
        Assert.Equal("stock", await CodeAsync(unit));
        var fitted = (await workshop.GetAsync($"parts/{capsule}")).Expect(200).At("standing");
        Assert.Equal(("fitted", unit), (fitted.Text("code"), fitted.Text("where")));
        await AtTheStationAsync(capsule, "fitted", unit);
    }

    [Fact]
    public async Task A_part_says_what_it_waits_for_and_until_when()
    {
        var serial = await workshop.MountAsync();
        var load = (
            await workshop.PostAsync(
                "loads",
                new
                {
                    stage = "cure",
                    station = "PLATE-1",
                    parts = new[] { serial },
                }
            )
        ).Expect(201).Id();
        var standing = (await workshop.GetAsync($"parts/{serial}")).Expect(200);
        Assert.Equal(("in-work", "waiting"), (standing.Text("state"), standing.Text("standing.code")));
        Assert.Equal(standing.Text("standing.until"), (await ListedAsync("kind=diaphragm&state=in-work", serial)).Text("standing.until"));
        (await workshop.PostAsync($"loads/{load}/log", Workshop.Csv(workshop.LogOfNow()))).Expect(201);
        workshop.Clock.Pass(TimeSpan.FromMinutes(61));
        Assert.Equal("in-work", await CodeAsync(serial));
    }

    [Fact]
    public async Task A_part_with_a_nonconformity_is_blocked_and_says_by_what()
    {
        var diaphragm = await workshop.DiaphragmAsync();
        (await workshop.PostAsync($"parts/{diaphragm}/nonconformities", new { code = "dent", description = "a dent in the ring" })).Expect(
            201
        );
        var standing = (await workshop.GetAsync($"parts/{diaphragm}")).Expect(200).At("standing");
        Assert.Equal(
            ("blocked", true),
            (standing.Text("code"), standing.Text("because").Contains("a dent in the ring", StringComparison.Ordinal))
        );
        Assert.Equal("blocked", await InListAsync("kind=diaphragm&state=nonconforming", diaphragm));
        await AtTheStationAsync(diaphragm, "blocked", "a dent in the ring");
    }

    [Fact]
    public async Task A_shipped_unit_takes_what_is_in_it_along_on_every_page()
    {
        await FilmAsync("ST-S");
        var (front, rear) = (await workshop.DiaphragmAsync(film: "ST-S"), await workshop.DiaphragmAsync(film: "ST-S"));
        var capsule = await workshop.CapsuleAsync(front, rear);
        var unit = await ShippedAsync(await workshop.UnitAsync(capsule), "Studio Reed");

        foreach (var serial in new[] { unit, capsule, front })
        {
            var standing = (await workshop.GetAsync($"parts/{serial}")).Expect(200).At("standing");
            Assert.Equal(
                ("shipped", true),
                (standing.Text("code"), standing.Text("where").Contains("Studio Reed", StringComparison.Ordinal))
            );
        }

        Assert.All(await TracedAsync("ST-S"), code => Assert.Equal("shipped", code));
        Assert.All(
            (await workshop.GetAsync("lots/ST-S/where-used")).Expect(200).List(),
            p => Assert.Equal("shipped", p.Text("standing.code"))
        );
        await AtTheStationAsync(unit, "shipped", "Studio Reed");
        Assert.Contains(
            "shipped",
            (await workshop.GetAsync($"search?q={unit}", Workshop.ServiceDesk)).Expect(200).List()[0].Text("words"),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_unit_that_came_back_is_returned_everywhere_and_keeps_customer_and_day_on_its_page()
    {
        await FilmAsync("ST-R");
        var (front, rear) = (await workshop.DiaphragmAsync(film: "ST-R"), await workshop.DiaphragmAsync(film: "ST-R"));
        var unit = await ShippedAsync(await workshop.UnitAsync(await workshop.CapsuleAsync(front, rear)), "Studio Heath");
        var back = (await workshop.PostAsync("returns", new { serial = unit, complaint = "hums at night" }, Workshop.ServiceDesk)).Expect(
            201
        );
        Assert.Equal(("finished", "returned"), (back.Text("part.state"), back.Text("part.standing.code")));

        Assert.Equal("returned", await CodeAsync(unit));
        Assert.Equal("returned", await InListAsync("kind=unit&state=finished", unit));
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
        await AtTheStationAsync(unit, "returned", "hums at night");
    }

    [Fact]
    public async Task A_diaphragm_scrapped_after_its_unit_had_left_without_it_is_scrapped_on_the_film_lots_page_as_in_its_trace()
    {
        await FilmAsync("ST-X");
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
        await ShippedAsync(unit, "Studio Fen");
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

        Assert.Equal("scrapped", await CodeAsync(front));
        var listed = (await workshop.GetAsync("quality/film-lots/ST-X/parts")).Expect(200).List().Single(p => p.Text("serial") == front);
        Assert.Equal(("scrapped", unit), (listed.Text("standing.code"), listed.Text("unit")));
        var traced = (await workshop.GetAsync("quality/trace?what=lot&code=ST-X"))
            .Expect(200)
            .List()
            .Single(p => p.Text("serial") == front);
        Assert.Equal(("scrapped", "scrapped"), (traced.Text("where"), traced.Text("standing.code")));
        await AtTheStationAsync(capsule, "scrapped", "cracked through");
    }

    [Fact]
    public async Task Every_list_says_of_every_part_what_its_own_answer_says()
    {
        await FilmAsync("ST-L");
        var waiting = await workshop.MountAsync("ST-L");
        (
            await workshop.PostAsync(
                "loads",
                new
                {
                    stage = "cure",
                    station = "PLATE-1",
                    parts = new[] { waiting },
                }
            )
        ).Expect(201);
        var (front, rear) = (await workshop.DiaphragmAsync(film: "ST-L"), await workshop.DiaphragmAsync(film: "ST-L"));
        var unit = await ShippedAsync(await workshop.UnitAsync(await workshop.CapsuleAsync(front, rear)), "Studio Moss");
        (await workshop.PostAsync("returns", new { serial = unit, complaint = "thin" }, Workshop.ServiceDesk)).Expect(201);
        var loose = await workshop.DiaphragmAsync(film: "ST-L");
        (await workshop.PostAsync("holds", new { part = loose, reason = "dropped" }, Workshop.Quality)).Expect(201);
        await workshop.MountAsync("ST-L");

        var listed = (await workshop.GetAsync("parts?limit=500")).Expect(200).List();
        foreach (var row in listed)
        {
            Assert.Equal((await workshop.GetAsync($"parts/{row.Text("serial")}")).Expect(200).Text("standing"), row.Text("standing"));
        }

        foreach (
            var row in (await workshop.GetAsync("quality/trace?what=lot&code=ST-L"))
                .Expect(200)
                .List()
                .Concat((await workshop.GetAsync("lots/ST-L/where-used")).Expect(200).List())
        )
        {
            Assert.Equal((await workshop.GetAsync($"parts/{row.Text("serial")}")).Expect(200).Text("standing"), row.Text("standing"));
        }
    }

    /// <summary>The station says of a part the word and the reason, and shows no green sign beside it.</summary>
    private async Task AtTheStationAsync(string serial, string word, string reason)
    {
        var visitor = await Visitor.SignedInAsync(workshop);
        await visitor.ScanAsync(serial);
        var (text, html) = (visitor.Now.Text, visitor.Now.Html[..visitor.Now.Html.IndexOf("id=\"st-side\"", StringComparison.Ordinal)]);
        Assert.Contains(word, text, StringComparison.OrdinalIgnoreCase);
        Assert.Contains(reason, text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("ready to be fitted", text, StringComparison.Ordinal);
        Assert.DoesNotContain("certificate may be issued", text, StringComparison.Ordinal);
        Assert.DoesNotContain("badge-ok", html, StringComparison.Ordinal);
        Assert.DoesNotContain("message-ok", html, StringComparison.Ordinal);
    }

    private async Task<string> CodeAsync(string serial) => (await workshop.GetAsync($"parts/{serial}")).Expect(200).Text("standing.code");

    private async Task<System.Text.Json.JsonElement> ListedAsync(string query, string serial) =>
        (await workshop.GetAsync($"parts?{query}&limit=500")).Expect(200).List().Single(p => p.Text("serial") == serial);

    private async Task<string> InListAsync(string query, string serial) => (await ListedAsync(query, serial)).Text("standing.code");

    private async Task<IEnumerable<string>> TracedAsync(string lot) =>
        (await workshop.GetAsync($"quality/trace?what=lot&code={lot}")).Expect(200).List().Select(p => p.Text("standing.code"));

    private async Task FilmAsync(string number)
    {
        var lot = new
        {
            number,
            kind = "film",
            supplier = "Invented Films",
            supplierLot = $"melt {number}",
            quantity = 10,
            unit = "m",
            film = new { baseThicknessUm = 6, metalThicknessNm = 40 },
        };
        (await workshop.PostAsync("lots", lot, Workshop.Quality)).Expect(201);
        (await workshop.PostAsync($"lots/{number}/release", new { reason = "seen" }, Workshop.Quality)).Expect(200);
    }

    private async Task<string> ShippedAsync(string unit, string reference)
    {
        (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);
        (await workshop.PostAsync($"parts/{unit}/shipments", new { customerReference = reference }, Workshop.Quality)).Expect(201);
        return unit;
    }
}
