namespace Traceability.Web.Tests.Station;

public sealed class LifeOfAPartTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task The_history_tells_every_fact_in_order_with_who_where_and_with_what()
    {
        var serial = await workshop.DiaphragmAsync(903);
        var history = (await workshop.GetAsync($"parts/{serial}/history")).Expect(200);

        string[] expected =
        [
            "registered",
            "opened",
            "reading",
            "fitted",
            "closed",
            "opened",
            "evidence",
            "closed",
            "opened",
            "instrument",
            "reading",
            "closed",
        ];
        Assert.Equal(expected, history.Texts("items", "what"));
        var reading = history.List()[10];
        Assert.Equal(
            ("903", "880", "920", "BENCH-1"),
            (reading.Text("reading.value"), reading.Text("reading.lower"), reading.Text("reading.upper"), reading.Text("station"))
        );
        Assert.Equal("RB-1", reading.List("instruments")[0].ToString());
        Assert.Equal(("B1", "Bea Builder"), (reading.Text("by.badge"), reading.Text("by.name")));
        Assert.Equal(Workshop.Film, history.List()[3].Text("item"));
    }

    [Fact]
    public async Task The_history_of_a_fitted_part_says_where_it_went()
    {
        var front = await workshop.DiaphragmAsync();
        var capsule = await workshop.CapsuleAsync(front);
        var last = (await workshop.GetAsync($"parts/{front}/history")).Expect(200).List()[^1];
        Assert.Equal(("fitted-into", capsule, "front"), (last.Text("what"), last.Text("item"), last.Text("position")));
    }

    [Fact]
    public async Task The_history_as_of_a_time_leaves_out_what_came_later()
    {
        var serial = await workshop.MountAsync();
        var then = workshop.Clock.GetUtcNow();
        workshop.Clock.Pass(TimeSpan.FromMinutes(1));
        await workshop.CureAsync(serial);
        var history = (await workshop.GetAsync($"parts/{serial}/history?asOf={then:yyyy-MM-ddTHH:mm:ss.fffffffZ}")).Expect(200);
        Assert.Equal("closed", history.List()[^1].Text("what"));
        Assert.Equal("mount", history.List()[^1].Text("stage"));
    }

    [Fact]
    public async Task A_unit_is_made_of_its_capsule_its_diaphragms_and_the_film_lot()
    {
        var capsule = await workshop.CapsuleAsync();
        var unit = await workshop.UnitAsync(capsule);
        var tree = (await workshop.GetAsync($"parts/{unit}/made-of")).Expect(200);
        var top = tree.List("inside")[0];
        Assert.Equal((capsule, "capsule", "True"), (top.Text("serial"), top.Text("position"), top.Text("present")));
        Assert.Equal(["front", "rear", "ring"], top.Texts("inside", "position"));
        var film = top.List("inside")[0].List("inside")[0];
        Assert.Equal((Workshop.Film, "S-FILM-1"), (film.Text("lot"), film.Text("supplierLot")));
    }

    [Fact]
    public async Task What_was_taken_out_stays_in_the_tree_as_removed_and_was_present_before()
    {
        var front = await workshop.DiaphragmAsync();
        var capsule = await workshop.CapsuleAsync(front);
        var before = workshop.Clock.GetUtcNow();
        workshop.Clock.Pass(TimeSpan.FromMinutes(5));
        (await workshop.PostAsync($"parts/{capsule}/removals", new { position = "front", reason = "scratch seen" })).Expect(201);

        var now = (await workshop.GetAsync($"parts/{capsule}/made-of")).Expect(200).List("inside")[0];
        Assert.Equal(("False", "scratch seen"), (now.Text("present"), now.Text("removedBecause")));
        var then = (await workshop.GetAsync($"parts/{capsule}/made-of?asOf={before:yyyy-MM-ddTHH:mm:ss.fffffffZ}"))
            .Expect(200)
            .List("inside")[0];
        Assert.Equal("True", then.Text("present"));
        Assert.Equal("finished", await workshop.StateOfAsync(front));
        var gates = (await workshop.GetAsync($"parts/{capsule}")).Expect(200);
        Assert.Equal("stack", gates.Text("stage"));
    }

    [Fact]
    public async Task Unknown_parts_have_no_history_and_nothing_inside()
    {
        Assert.Contains("NOBODY", (await workshop.GetAsync("parts/NOBODY/history")).Problem(404), StringComparison.Ordinal);
        (await workshop.GetAsync("parts/NOBODY/made-of")).Expect(404);
        (await workshop.GetAsync("parts/NOBODY/history?asOf=yesterday")).Expect(400);
    }

    [Fact]
    public async Task Times_with_another_offset_are_understood()
    {
        var serial = await workshop.RegisterAsync("unit");
        (await workshop.GetAsync($"parts/{serial}/history?asOf=2031-01-01T00:00:00%2B05:30")).Expect(200);
        (await workshop.GetAsync($"lots/{Workshop.Film}/where-used?at=2031-01-01T00:00:00%2B05:30")).Expect(200);
    }
}
