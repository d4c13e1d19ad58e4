using System.Text.Json;

namespace Traceability.Web.Tests.Demonstration;

/// <summary>The demo holds what its README tells.</summary>
[Collection(InDemoWorkshop.Name)]
public sealed class DemoScenarioTests(DemoWorkshop demo)
{
    [Fact]
    public async Task Most_of_the_sixty_two_finished_units_are_with_customers()
    {
        Assert.Equal(52, (await demo.SerialsAsync("kind=unit&state=shipped")).Count);
        Assert.Equal(["US-0030"], await demo.SerialsAsync("kind=unit&state=on-hold"));
        Assert.Equal(
            ["UD-0018", "UD-0029", "UD-0030", "UD-0031", "UD-0032", "US-0015", "US-0029", "US-0031", "US-0032"],
            await demo.SerialsAsync("kind=unit&state=finished")
        );
    }

    [Fact]
    public async Task Every_attempt_judged_again_from_its_evidence_comes_out_as_it_did()
    {
        var again = await demo.RecomputedAsync();
        Assert.Empty(again.Differences);
        Assert.True(again.Judged > 2000, $"{again.Judged} attempts");
        Assert.Equal(0, again.OlderMethod);
    }

    [Fact]
    public async Task Ledger_tables_and_files_agree_also_of_film_lots_which_are_lots_and_parts_under_one_id() =>
        Assert.Empty(await demo.DisagreementsAsync());

    [Fact]
    public async Task Twenty_parts_are_in_flight()
    {
        var queries =
            from kind in new[] { "diaphragm", "capsule", "board-set", "unit" }
            from state in new[] { "ready", "in-work", "nonconforming" }
            select $"kind={kind}&state={state}";
        var inFlight = await Task.WhenAll(queries.Select(demo.SerialsAsync));
        Assert.Equal(20, inFlight.Sum(s => s.Count));
        Assert.Equal(["CD-0037", "CS-0037", "DD-0203", "DD-0204"], await demo.SerialsAsync("state=in-work"));
        Assert.Equal(["BS-0038", "CD-0036"], await demo.SerialsAsync("state=nonconforming"));
    }

    [Fact]
    public async Task Spares_of_every_kind_lie_free()
    {
        Assert.Equal(
            ["DD-0065", "DD-0066", "DD-0067", "DD-0068", "DS-0033", "DS-0034", "DS-0035"],
            await demo.SerialsAsync("kind=diaphragm&free=true")
        );
        Assert.Equal(["CD-0034", "CS-0035"], await demo.SerialsAsync("kind=capsule&free=true"));
        Assert.Superset(
            new HashSet<string> { "BD-0036", "BD-0037", "BS-0036", "BS-0037" },
            (await demo.SerialsAsync("kind=board-set&free=true")).ToHashSet()
        );
    }

    [Fact]
    public async Task Every_lot_kind_and_instrument_kind_that_a_route_asks_for_can_be_had()
    {
        var stages = (await demo.GetAsync("routes")).List().SelectMany(r => r.List("stages")).ToList();
        var lots = (await demo.GetAsync("lots?state=released&limit=500")).Texts("items", "kind");
        var instruments = (await demo.GetAsync("instruments"))
            .List()
            .Where(i => i.Text("state") == "usable")
            .Select(i => i.Text("kind"))
            .ToHashSet();
        Assert.Superset(
            stages
                .SelectMany(s => s.List("slots"))
                .Where(s => s.At("accepts").Has("lotKind"))
                .Select(s => s.Text("accepts.lotKind"))
                .ToHashSet(),
            lots.ToHashSet()
        );
        Assert.Superset(stages.SelectMany(s => s.List("instrumentKinds")).Select(k => k.GetString()!).ToHashSet(), instruments);
    }

    [Fact]
    public async Task The_leaky_film_is_in_units_that_have_left()
    {
        var users = (await demo.GetAsync("lots/F-2603/where-used?limit=500")).List();
        Assert.Equal(7, users.Count(u => u.Text("kind") == "unit" && u.Text("state") == "shipped" && u.Text("present") == "True"));
        Assert.Contains(users, u => u.Text("serial") == "UD-0014" && u.Text("present") == "False");
        Assert.Equal("quarantined", (await demo.GetAsync("lots/F-2603")).Text("state"));
    }

    [Fact]
    public async Task Scrapped_parts_are_those_of_the_stories() =>
        Assert.Equal(
            ["BS-0101", "CD-0014", "CD-0017", "CS-0017", "DD-0101", "DD-0102", "DD-0103", "DD-0104", "DS-0101", "DS-0102"],
            await demo.SerialsAsync("state=scrapped")
        );

    [Fact]
    public async Task Three_units_came_back_and_one_return_is_open()
    {
        var returns = (await demo.GetAsync("returns")).List();
        Assert.Equal(["UD-0014", "US-0004", "US-0015"], returns.Select(r => r.Text("serial")).Order(StringComparer.Ordinal));
        Assert.Equal("US-0015", returns.Single(r => r.At("open").GetBoolean()).Text("serial"));
    }

    [Theory]
    [InlineData("DD-0041", "concession")]
    [InlineData("US-0011", "concession")]
    [InlineData("CD-0027", "rework")]
    [InlineData("CS-0021", "rework")]
    [InlineData("CS-0005", "rework")]
    [InlineData("CD-0006", "correct")]
    [InlineData("CS-0010", "correct")]
    public async Task The_history_tells_the_decision(string serial, string word)
    {
        var history = await demo.GetAsync($"parts/{serial}/history");
        Assert.Contains(word, history.GetRawText(), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task The_drifted_meter_is_held_and_the_others_are_usable()
    {
        var instruments = (await demo.GetAsync("instruments")).List();
        Assert.Equal(["CAP-02"], instruments.Where(i => i.Text("state") != "usable").Select(i => i.Text("code")));
    }

    [Fact]
    public async Task Nothing_lies_in_the_future_of_the_day_it_was_loaded_for()
    {
        var occurred = new List<string>();
        foreach (var serial in (await demo.SerialsAsync("kind=unit")).Concat(await demo.SerialsAsync("kind=capsule&state=in-work")))
        {
            Collect(await demo.GetAsync($"parts/{serial}/history"), occurred);
        }

        Assert.NotEmpty(occurred);
        Assert.True(
            occurred.Max(o => DateTimeOffset.Parse(o, System.Globalization.CultureInfo.InvariantCulture))
                < new DateTimeOffset(demo.Today, TimeOnly.MinValue, TimeSpan.Zero)
        );
    }

    private static void Collect(JsonElement json, List<string> occurred)
    {
        foreach (
            var child in json.ValueKind switch
            {
                JsonValueKind.Object => json.EnumerateObject().Select(p => p.Value),
                JsonValueKind.Array => json.EnumerateArray(),
                _ => Enumerable.Empty<JsonElement>(),
            }
        )
        {
            Collect(child, occurred);
        }

        if (json.ValueKind == JsonValueKind.Object && json.TryGetProperty("occurredAt", out var at) && at.ValueKind == JsonValueKind.String)
        {
            occurred.Add(at.GetString()!);
        }
    }
}
