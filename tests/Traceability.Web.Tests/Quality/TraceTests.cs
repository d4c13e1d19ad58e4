namespace Traceability.Web.Tests.Quality;

public sealed class TraceTests(Workshop workshop) : IClassFixture<Workshop>
{
    private static readonly string Pin = Workshop.PinOf(Workshop.Quality);

    [Fact]
    public async Task A_lot_found_bad_leads_to_every_part_with_the_place_where_each_is()
    {
        await FilmAsync("TR-A");
        var capsule = await workshop.CapsuleAsync(await workshop.DiaphragmAsync(film: "TR-A"), await workshop.DiaphragmAsync(film: "TR-A"));
        var unit = await workshop.UnitAsync(capsule);
        await ShipAsync(unit);
        var loose = await workshop.MountAsync("TR-A");
        var spare = await workshop.DiaphragmAsync(film: "TR-A");
        var found = (await workshop.GetAsync("quality/trace?what=lot&code=tr-a")).Expect(200).List().ToDictionary(p => p.Text("serial"));
        Assert.Equal(6, found.Count);
        Assert.Equal(
            ("shipped", "Studio Nowhere", "2"),
            (found[unit].Text("where"), found[unit].Text("customerReference"), found[unit].Text("times"))
        );
        Assert.Equal(
            ("shipped", unit, "fitted"),
            (found[capsule].Text("where"), found[capsule].Text("fittedIn"), found[capsule].Text("state"))
        );
        Assert.Equal(("in-work", "Cure"), (found[loose].Text("where"), found[loose].Text("stage")));
        Assert.Equal("stock", found[spare].Text("where"));
    }

    [Fact]
    public async Task A_suppliers_lot_is_followed_through_all_the_numbers_it_came_in_under()
    {
        foreach (var number in new[] { "TR-B1", "TR-B2" })
        {
            var lot = new
            {
                number,
                kind = "film",
                supplier = "Invented Films",
                supplierLot = "melt 77/b",
                quantity = 10,
                unit = "m",
                film = new { baseThicknessUm = 6, metalThicknessNm = 40 },
            };
            (await workshop.PostAsync("lots", lot, Workshop.Quality)).Expect(201);
            (await workshop.PostAsync($"lots/{number}/release", new { reason = "seen" }, Workshop.Quality)).Expect(200);
        }

        string[] made = [await workshop.MountAsync("TR-B1"), await workshop.MountAsync("TR-B2")];
        var found = (await workshop.GetAsync("quality/trace?what=supplier-lot&code=melt%2077/b")).Expect(200);
        Assert.Equal(made.Order(), found.Texts("items", "serial").Order());
        Assert.Equal(new[] { "TR-B1", "TR-B2" }, found.List("lots").Select(l => l.GetString()));
    }

    [Fact]
    public async Task An_instrument_leads_to_what_was_measured_with_it_since_its_last_good_calibration_and_to_units_that_hold_that_since()
    {
        var early = await workshop.DiaphragmAsync();
        workshop.Clock.Pass(TimeSpan.FromDays(1));
        await CalibrateAsync(passed: true);
        workshop.Clock.Pass(TimeSpan.FromMinutes(1));
        var late = await workshop.DiaphragmAsync();
        var capsule = await workshop.CapsuleAsync(early, late);
        workshop.Clock.Pass(TimeSpan.FromDays(1));
        await CalibrateAsync(passed: false);
        var found = (await workshop.GetAsync("instruments/rb-1/affected")).Expect(200);
        var parts = found.List().ToDictionary(p => p.Text("serial"));
        Assert.True(found.Has("since") || found.Has("from"));
        Assert.DoesNotContain(early, parts.Keys);
        Assert.Equal(("True", "True"), (parts[late].Text("direct"), parts[late].Text("present")));
        Assert.Equal(("False", "True"), (parts[capsule].Text("direct"), parts[capsule].Text("present")));
        Assert.Contains(
            early,
            (await workshop.GetAsync("instruments/RB-1/affected?since=2026-01-01T00:00:00Z")).Expect(200).Texts("items", "serial")
        );
        await CalibrateAsync(passed: true);
    }

    [Fact]
    public async Task A_part_that_was_taken_out_before_it_was_touched_leads_not_to_the_unit_it_was_in()
    {
        var capsule = await workshop.CapsuleAsync();
        var first = await workshop.UnitAsync(capsule);
        (await workshop.PostAsync($"parts/{first}/removals", new { position = "capsule", reason = "swap" })).Expect(201);
        workshop.Clock.Pass(TimeSpan.FromMinutes(5));
        var since = workshop.Clock.GetUtcNow();
        var second = await workshop.UnitAsync(capsule);
        var touched = (await workshop.GetAsync($"quality/trace?what=person&code=b1&from={since:yyyy-MM-ddTHH:mm:ss.fffZ}"))
            .Expect(200)
            .Texts("items", "serial");
        Assert.Contains(second, touched);
        Assert.DoesNotContain(first, touched);
        var byCapsulesFilm = (await workshop.GetAsync($"quality/trace?what=lot&code={Workshop.Film}&limit=500"))
            .Expect(200)
            .List()
            .ToDictionary(p => p.Text("serial"));
        Assert.Equal(("False", "True"), (byCapsulesFilm[first].Text("present"), byCapsulesFilm[second].Text("present")));
        var then = (await workshop.GetAsync($"quality/trace?what=lot&code={Workshop.Film}&limit=500&at={since:yyyy-MM-ddTHH:mm:ss.fffZ}"))
            .Expect(200)
            .List()
            .ToDictionary(p => p.Text("serial"));
        Assert.Equal(
            ("False", "stock", "True"),
            (then[first].Text("present"), then[capsule].Text("where"), (!then.ContainsKey(second)).ToString())
        );
    }

    [Fact]
    public async Task Carriers_loads_and_stations_lead_to_what_was_in_them()
    {
        var carried = await workshop.MountAsync(carrier: "JIG-TR");
        var load = (
            await workshop.PostAsync(
                "loads",
                new
                {
                    stage = "cure",
                    station = "PLATE-1",
                    parts = new[] { carried },
                }
            )
        ).Expect(201).Id();
        Assert.Equal([carried], (await workshop.GetAsync("quality/trace?what=carrier&code=jig-tr")).Expect(200).Texts("items", "serial"));
        Assert.Equal([carried], (await workshop.GetAsync($"quality/trace?what=load&code={load}")).Expect(200).Texts("items", "serial"));
        Assert.Contains(
            carried,
            (await workshop.GetAsync("quality/trace?what=station&code=plate-1&limit=500")).Expect(200).Texts("items", "serial")
        );
        Assert.Empty((await workshop.GetAsync("quality/trace?what=station&code=PLATE-1&to=2020-01-01T00:00:00Z")).Expect(200).List());
    }

    [Fact]
    public async Task Everything_that_a_trace_finds_is_held_at_once_and_only_once()
    {
        await FilmAsync("TR-H");
        var capsule = await workshop.CapsuleAsync(await workshop.DiaphragmAsync(film: "TR-H"), await workshop.DiaphragmAsync(film: "TR-H"));
        var unit = await workshop.UnitAsync(capsule);
        var hold = new
        {
            what = "lot",
            code = "TR-H",
            reason = "pinholes",
            pin = Pin,
        };
        (
            await workshop.PostAsync(
                "quality/trace/holds",
                new
                {
                    what = "lot",
                    code = "TR-H",
                    reason = "pinholes",
                    pin = "999999",
                },
                Workshop.Quality
            )
        ).Expect(403);
        (await workshop.PostAsync("quality/trace/holds", hold, Workshop.ServiceDesk)).Expect(403);
        (
            await workshop.PostAsync(
                "quality/trace/holds",
                new
                {
                    what = "lot",
                    code = "TR-H",
                    reason = " ",
                    pin = Pin,
                },
                Workshop.Quality
            )
        ).Expect(400);
        var held = (await workshop.PostAsync("quality/trace/holds", hold, Workshop.Quality)).Expect(201);
        Assert.Equal((4, "TR-H"), (held.List("parts").Count, held.List("lots")[0].GetString()));
        Assert.Equal("on-hold", await workshop.StateOfAsync(unit));
        (await workshop.PostAsync($"parts/{unit}/certificates", new { }, Workshop.Quality)).Expect(409);
        Assert.Contains(
            "already",
            (await workshop.PostAsync("quality/trace/holds", hold, Workshop.Quality)).Problem(409),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task What_cannot_be_traced_is_said_in_words()
    {
        async Task RefusedAsync(int status, string query, string badge = Workshop.Quality) =>
            (await workshop.GetAsync($"quality/trace?{query}", badge)).Expect(status);
        await RefusedAsync(404, "what=lot&code=NOTHING");
        await RefusedAsync(404, "what=supplier-lot&code=NOTHING");
        await RefusedAsync(404, "what=instrument&code=NOTHING");
        await RefusedAsync(404, "what=carrier&code=NOTHING");
        await RefusedAsync(404, "what=load&code=NOTHING");
        await RefusedAsync(404, "what=station&code=NOTHING");
        await RefusedAsync(404, "what=person&code=NOTHING");
        await RefusedAsync(400, "what=thing&code=X");
        await RefusedAsync(400, "what=lot&code=%20");
        await RefusedAsync(400, "code=X");
        await RefusedAsync(400, "what=person&code=B1&from=2026-02-01T00:00:00Z&to=2026-01-01T00:00:00Z");
        await RefusedAsync(403, $"what=lot&code={Workshop.Film}", Workshop.Builder);
        (await workshop.GetAsync("instruments/NOTHING/affected")).Expect(404);
    }

    private Task FilmAsync(string number) =>
        WorkshopSetUp.LotAsync(workshop, number, "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });

    private async Task ShipAsync(string unit)
    {
        (await workshop.PostAsync($"parts/{unit}/certificates", new { }, Workshop.Quality)).Expect(201);
        (await workshop.PostAsync($"parts/{unit}/shipments", new { customerReference = "Studio Nowhere" }, Workshop.Quality)).Expect(201);
    }

    private async Task CalibrateAsync(bool passed)
    {
        var today = DateOnly.FromDateTime(workshop.Clock.GetUtcNow().UtcDateTime);
        (
            await workshop.PostAsync(
                "instruments/RB-1/calibrations",
                new
                {
                    calibratedOn = today,
                    dueOn = today.AddDays(365),
                    reference = "CAL",
                    passed,
                },
                Workshop.Quality
            )
        ).Expect(201);
    }
}
