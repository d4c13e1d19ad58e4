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
        await workshop.FilmAsync("ST-Q");
        Assert.Equal("finished", await workshop.CodeAsync("ST-Q"));
        (await workshop.PostAsync("lots/ST-Q/quarantine", new { reason = "pinholes seen" }, Workshop.Quality)).Expect(200);

        var standing = (await workshop.GetAsync("parts/ST-Q")).Expect(200).At("standing");
        Assert.Equal(("quarantined", "pinholes seen"), (standing.Text("code"), standing.Text("because")));
        Assert.Equal("quarantined", await workshop.InListAsync("kind=film-lot", "ST-Q"));
        Assert.DoesNotContain("ST-Q", (await workshop.GetAsync("parts?kind=film-lot&free=true")).Expect(200).Texts("items", "serial"));
        await workshop.AtTheStationAsync("ST-Q", "quarantined", "pinholes seen");
    }

    [Fact]
    public async Task What_holds_film_of_a_lot_in_quarantine_or_on_hold_is_quarantined_or_held_itself()
    {
        await workshop.FilmAsync("ST-H");
        var (front, rear) = (await workshop.DiaphragmAsync(film: "ST-H"), await workshop.DiaphragmAsync(film: "ST-H"));
        var capsule = await workshop.CapsuleAsync(front, rear);
        (await workshop.PostAsync("lots/ST-H/quarantine", new { reason = "curls" }, Workshop.Quality)).Expect(200);
        Assert.Equal(("quarantined", "quarantined"), (await workshop.CodeAsync(front), await workshop.CodeAsync(capsule)));

        var hold = (await workshop.PostAsync("holds", new { lot = "ST-H", reason = "pinholes" }, Workshop.Quality)).Expect(201).Id();
        Assert.Equal(("held", "held"), (await workshop.CodeAsync(front), await workshop.CodeAsync(capsule)));
        Assert.Contains(
            "pinholes",
            (await workshop.GetAsync($"parts/{capsule}")).Expect(200).Text("standing.because"),
            StringComparison.Ordinal
        );
        Assert.All(await workshop.TracedAsync("ST-H"), code => Assert.Equal("held", code));
        await workshop.AtTheStationAsync(capsule, "held", "pinholes");

        (await workshop.PostAsync($"holds/{hold}/release", new { reason = "looked at" }, Workshop.Quality)).Expect(201);
        Assert.Equal("quarantined", await workshop.CodeAsync(capsule));
    }

    [Fact]
    public async Task A_finished_part_is_free_a_finished_unit_in_stock_and_a_fitted_part_in_what_holds_it()
    {
        var capsule = await workshop.CapsuleAsync();
        Assert.Equal("finished", await workshop.CodeAsync(capsule));
        var unit = await workshop.UnitAsync(capsule);
        Assert.Equal("stock", await workshop.CodeAsync(unit));
        var fitted = (await workshop.GetAsync($"parts/{capsule}")).Expect(200).At("standing");
        Assert.Equal(("fitted", unit), (fitted.Text("code"), fitted.Text("where")));
        await workshop.AtTheStationAsync(capsule, "fitted", unit);
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
        Assert.Equal(
            standing.Text("standing.until"),
            (await workshop.ListedAsync("kind=diaphragm&state=in-work", serial)).Text("standing.until")
        );
        (await workshop.PostAsync($"loads/{load}/log", Workshop.Csv(workshop.LogOfNow()))).Expect(201);
        workshop.Clock.Pass(TimeSpan.FromMinutes(61));
        Assert.Equal("in-work", await workshop.CodeAsync(serial));
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
        Assert.Equal("blocked", await workshop.InListAsync("kind=diaphragm&state=nonconforming", diaphragm));
        await workshop.AtTheStationAsync(diaphragm, "blocked", "a dent in the ring");
    }

    [Fact]
    public async Task Every_list_says_of_every_part_what_its_own_answer_says()
    {
        await workshop.FilmAsync("ST-L");
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
        var unit = await workshop.ShippedAsync(await workshop.UnitAsync(await workshop.CapsuleAsync(front, rear)), "Studio Moss");
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
}
