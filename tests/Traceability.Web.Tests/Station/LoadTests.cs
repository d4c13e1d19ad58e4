namespace Traceability.Web.Tests.Station;

public sealed class LoadTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_load_gives_every_part_its_own_attempt_and_verdict()
    {
        var first = await workshop.MountAsync();
        var second = await workshop.MountAsync(carrier: "JIG-7");
        var load = await StartAsync(first, "jig-7");
        Assert.Equal([first, second], load.Texts("attempts", "serial"));
        (await workshop.PostAsync($"loads/{load.Id()}/log?name=plate-log", Workshop.Csv(workshop.LogOfNow()))).Expect(201);
        workshop.Clock.Pass(TimeSpan.FromMinutes(61));

        var closed = (await workshop.PostAsync($"loads/{load.Id()}/close", new { note = "even heat" })).Expect(200);
        Assert.Equal(["pass", "pass"], closed.Texts("results", "verdict"));
        Assert.Equal(new[] { first, second }.Order(), closed.Texts("results", "serial"));
        Assert.Equal("verify", (await workshop.GetAsync($"parts/{first}")).Expect(200).Text("stage"));
        var read = (await workshop.GetAsync($"loads/{load.Id()}")).Expect(200);
        Assert.Equal(["pass", "pass"], read.Texts("parts", "state"));
        Assert.Equal("plate-log", read.List("evidence")[0].Text("name"));
    }

    [Fact]
    public async Task One_part_that_may_not_start_keeps_the_whole_load_from_starting()
    {
        var ready = await workshop.MountAsync();
        var notMounted = await workshop.RegisterAsync("diaphragm");
        var refused = await workshop.PostAsync(
            "loads",
            new
            {
                stage = "cure",
                station = "PLATE-1",
                parts = new[] { ready, notMounted },
            }
        );
        Assert.Contains(notMounted, refused.Problem(409), StringComparison.Ordinal);
        Assert.True(refused.Json.At("errors").Has(notMounted));
        Assert.False(refused.Json.At("errors").Has(ready));
        Assert.Equal("ready", await workshop.StateOfAsync(ready));
    }

    [Fact]
    public async Task A_cure_that_is_a_minute_short_does_not_end_for_any_part()
    {
        var (first, second) = (await workshop.MountAsync(), await workshop.MountAsync());
        var load = (await StartAsync(first, second)).Id();
        (await workshop.PostAsync($"loads/{load}/log", Workshop.Csv(workshop.LogOfNow()))).Expect(201);
        workshop.Clock.Pass(TimeSpan.FromMinutes(59));
        var refused = await workshop.PostAsync($"loads/{load}/close", null);
        Assert.Contains(second, refused.Problem(409), StringComparison.Ordinal);
        Assert.Equal("in-work", await workshop.StateOfAsync(first));
        workshop.Clock.Pass(TimeSpan.FromMinutes(1));
        (await workshop.PostAsync($"loads/{load}/close", null)).Expect(200);
    }

    [Fact]
    public async Task A_load_without_its_log_cannot_end()
    {
        var load = (await StartAsync(await workshop.MountAsync())).Id();
        workshop.Clock.Pass(TimeSpan.FromMinutes(61));
        Assert.Contains("plate-log", (await workshop.PostAsync($"loads/{load}/close", null)).Problem(409), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_part_whose_attempt_was_abandoned_meanwhile_is_left_alone_when_the_load_ends()
    {
        var (kept, dropped) = (await workshop.MountAsync(), await workshop.MountAsync());
        var load = await StartAsync(kept, dropped);
        var attempt = load.List("attempts").Single(a => a.Text("serial") == dropped).Id();
        (await workshop.PostAsync($"attempts/{attempt}/abandon", new { reason = "dropped" })).Expect(200);
        (await workshop.PostAsync($"loads/{load.Id()}/log", Workshop.Csv(workshop.LogOfNow()))).Expect(201);
        workshop.Clock.Pass(TimeSpan.FromMinutes(61));
        var closed = (await workshop.PostAsync($"loads/{load.Id()}/close", null)).Expect(200);
        Assert.Equal([kept], closed.Texts("results", "serial"));
        Assert.Contains(
            "closed already",
            (await workshop.PostAsync($"loads/{load.Id()}/close", null)).Problem(409),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "closed",
            (await workshop.PostAsync($"loads/{load.Id()}/log", Workshop.Csv(workshop.LogOfNow()))).Problem(409),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_bad_line_in_the_log_is_named_and_nothing_is_stored()
    {
        var load = (await StartAsync(await workshop.MountAsync())).Id();
        var refused = await workshop.PostAsync(
            $"loads/{load}/log",
            Workshop.Csv("time,temperature_c,humidity_pct\n2026-01-05T08:00:00Z,60,20\n2026-01-05T08:01:00Z,warm,20\n")
        );
        Assert.Contains("Line 3", refused.Problem(400), StringComparison.Ordinal);
        Assert.Empty((await workshop.GetAsync($"loads/{load}")).Expect(200).List("evidence"));
        (await workshop.PostAsync($"loads/{load}/log", new { text = "json" })).Expect(415);
    }

    [Fact]
    public async Task A_load_names_known_parts_once_and_a_stage_that_is_done_in_loads()
    {
        var serial = await workshop.MountAsync();
        async Task<string> RefusedAsync(string stage, params string[] parts) =>
            (
                await workshop.PostAsync(
                    "loads",
                    new
                    {
                        stage,
                        station = "PLATE-1",
                        parts,
                    }
                )
            ).Problem(400);

        Assert.Contains("1 to 200", await RefusedAsync("cure"), StringComparison.Ordinal);
        Assert.Contains("NOBODY", await RefusedAsync("cure", serial, "NOBODY"), StringComparison.Ordinal);
        Assert.Contains("already", await RefusedAsync("cure", serial, serial), StringComparison.Ordinal);
        Assert.Contains("not in loads", await RefusedAsync("mount", await workshop.RegisterAsync("diaphragm")), StringComparison.Ordinal);
        Assert.Contains("no stage", await RefusedAsync("bake", serial), StringComparison.Ordinal);
        (await workshop.GetAsync($"loads/{Guid.NewGuid()}")).Expect(404);
        (await workshop.PostAsync($"loads/{Guid.NewGuid()}/close", null)).Expect(404);
        (
            await workshop.PostAsync(
                "loads",
                new
                {
                    stage = "cure",
                    station = "PLATE-1",
                    parts = new[] { serial },
                },
                Workshop.ServiceDesk
            )
        ).Expect(403);
    }

    private async Task<System.Text.Json.JsonElement> StartAsync(params string[] parts) =>
        (
            await workshop.PostAsync(
                "loads",
                new
                {
                    stage = "cure",
                    station = "plate-1",
                    parts,
                }
            )
        ).Expect(201);
}
