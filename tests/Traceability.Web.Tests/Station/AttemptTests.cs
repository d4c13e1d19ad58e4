namespace Traceability.Web.Tests.Station;

public sealed class AttemptTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task An_attempt_shows_its_readings_fittings_instruments_and_state()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var attempt = await workshop.OpenAsync(serial, "mount");
        (await workshop.PostAsync($"attempts/{attempt}/readings", new { characteristic = "coarseHz", value = "850.0" })).Expect(201);
        (await workshop.PostAsync($"attempts/{attempt}/fittings", new { position = "film", lot = Workshop.Film })).Expect(201);
        var open = (await workshop.GetAsync($"attempts/{attempt}")).Expect(200);
        Assert.Equal(
            ("open", "850.0", Workshop.Film),
            (open.Text("state"), open.List("readings")[0].Text("value"), open.List("fittings")[0].Text("lot"))
        );
        (await workshop.PostAsync($"attempts/{attempt}/close", null)).Expect(200);
        Assert.Equal("pass", (await workshop.GetAsync($"attempts/{attempt}")).Expect(200).Text("state"));
        (await workshop.GetAsync($"attempts/{Guid.NewGuid()}")).Expect(404);
    }

    [Fact]
    public async Task Evidence_comes_back_byte_for_byte_and_only_with_its_own_attempt()
    {
        var unit = await workshop.UnitAsync();
        var closed = (await workshop.GetAsync($"parts/{unit}/history")).Expect(200).List().First(e => e.Text("what") == "evidence");
        var (attempt, evidence) = (closed.Id("attempt"), closed.Id("evidence.id"));
        var reply = await workshop.GetAsync($"attempts/{attempt}/evidence/{evidence}");
        Assert.Equal(Workshop.FlatResponse, reply.Body);
        (await workshop.GetAsync($"attempts/{Guid.NewGuid()}/evidence/{evidence}")).Expect(404);
    }

    [Fact]
    public async Task A_reading_from_a_machine_lands_in_the_one_attempt_open_at_its_station()
    {
        var reading = new { characteristic = "coarseHz", value = 870 };
        Assert.Contains(
            "no attempt is open",
            (await workshop.PostAsync("stations/bench-2/readings", reading, Workshop.Machine)).Problem(409),
            StringComparison.Ordinal
        );
        var serial = await workshop.RegisterAsync("diaphragm");
        var attempt = await workshop.OpenAsync(serial, "mount", "bench-2");
        (await workshop.PostAsync("stations/BENCH-2/readings", reading, Workshop.Machine)).Expect(201);
        var taken = (await workshop.GetAsync($"attempts/{attempt}")).Expect(200).List("readings")[0];
        Assert.Equal(("870", "instrument"), (taken.Text("value"), taken.Text("source")));

        await workshop.OpenAsync(await workshop.RegisterAsync("diaphragm"), "mount", "BENCH-2");
        Assert.Contains(
            "2 attempts are open",
            (await workshop.PostAsync("stations/BENCH-2/readings", reading, Workshop.Machine)).Problem(409),
            StringComparison.Ordinal
        );
        (await workshop.PostAsync("stations/NOWHERE/readings", reading, Workshop.Machine)).Expect(404);
        (await workshop.PostAsync("stations/BENCH-2/readings", reading, Workshop.ServiceDesk)).Expect(403);
    }

    [Fact]
    public async Task Mates_are_ranked_by_closeness_to_what_is_in_the_other_position()
    {
        var front = await workshop.DiaphragmAsync(890);
        var near = await workshop.DiaphragmAsync(893);
        var far = await workshop.DiaphragmAsync(915);
        var twinOfFar = await workshop.DiaphragmAsync(914);
        var capsule = await workshop.RegisterAsync("capsule");
        var attempt = await workshop.OpenAsync(capsule, "stack");
        (await workshop.PostAsync($"attempts/{attempt}/fittings", new { position = "front", child = front })).Expect(201);

        var found = (await workshop.GetAsync($"parts/{capsule}/mates?position=rear")).Expect(200);
        Assert.Equal([near, twinOfFar, far], found.Texts("mates", "serial"));
        Assert.Equal(["True", "False", "False"], found.Texts("mates", "within"));
        Assert.Equal(("3", "890"), (found.List("mates")[0].Text("difference"), found.List("against")[0].Text("value")));
        Assert.Equal(
            (Workshop.Film, "True", "0.3"),
            (found.List("mates")[0].Text("filmLot"), found.List("mates")[0].Text("sameFilmLot"), found.List("mates")[0].Text("distance"))
        );
        var pair = found.List("pairs").Single();
        Assert.Equal(new[] { far, twinOfFar }.Order(), new[] { pair.Text("first"), pair.Text("second") }.Order());
        (await workshop.GetAsync($"parts/{capsule}/mates?position=ring")).Expect(400);
        (await workshop.GetAsync($"parts/{capsule}/mates")).Expect(400);
    }
}
