using System.Globalization;
using System.Text;
using System.Text.Json;
using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Station;

/// <summary>Soaks judged by a log over HTTP: what of the log counts, and parts that leave their load one by one.</summary>
public sealed class SoakHttpTests(Workshop workshop) : IClassFixture<Workshop>
{
    private const string Route = """
        model: SOAK-1
        kind: capsule
        title: Capsule
        serialPrefix: SK
        author: L1
        approvedBy: Q1
        effectiveFrom: 2020-01-01
        stages:
          - code: humid
            title: Humid soak
            method: climate-soak
            loads: true
            evidence:
              - {name: climate-log, kind: climate-log}
            characteristics:
              - {name: humidDwellMinutes, label: Time in tolerance, unit: min, lower: 60, entered: false}
            parameters:
              toleranceSource: workshop procedure
              phases:
                - {name: humid, temperatureC: 40, temperatureToleranceK: 2, humidityPct: 93, humidityTolerancePct: 3, minDwellMinutes: 60,
                    maxGapMinutes: 30}
          - code: insulation
            title: Insulation
            method: entered-limits
            characteristics:
              - {name: insulationGohm, label: Insulation, unit: GOhm, lower: 100}
            windows:
              - {afterStage: humid, maximumMinutes: 15}
        """;

    [Fact]
    public async Task A_part_taken_out_of_its_load_has_a_closing_and_a_window_of_its_own()
    {
        var (early, late) = (await PartAsync(), await PartAsync());
        var (load, opened) = await LoadAsync(early, late);
        workshop.Clock.Pass(TimeSpan.FromMinutes(70));
        (await workshop.PostAsync($"loads/{load}/log?name=climate-log", Workshop.Csv(Log(opened, 70)))).Expect(201);

        var first = (await workshop.PostAsync($"loads/{load}/close", new { parts = new[] { early } })).Expect(200);

        Assert.Equal([early], first.Texts("results", "serial"));
        Assert.Equal("in-work", await workshop.StateOfAsync(late));
        Assert.Equal(70, Dwell(first));

        // The log is sent again, more completely: it counts for the part that stayed in, and changes nothing of the one that is out.
        workshop.Clock.Pass(TimeSpan.FromMinutes(60));
        (await workshop.PostAsync($"loads/{load}/log?name=climate-log", Workshop.Csv(Log(opened, 130)))).Expect(201);
        var second = (await workshop.PostAsync($"loads/{load}/close", new { })).Expect(200);

        Assert.Equal([late], second.Texts("results", "serial"));
        Assert.Equal(130, Dwell(second));
        Assert.Contains(
            "too late",
            (await workshop.PostAsync($"parts/{early}/attempts", new { stage = "insulation", station = "BENCH-1" })).Problem(409),
            StringComparison.Ordinal
        );
        await workshop.OpenAsync(late, "insulation");
        var attempt = await AttemptAsync(early);
        Assert.Single(attempt.List("evidence"));
        Assert.Single(attempt.List("readings"));
    }

    [Fact]
    public async Task Whoever_names_a_part_that_is_not_in_the_load_or_out_of_it_closes_nothing()
    {
        var (inside, outside) = (await PartAsync(), await PartAsync());
        var (load, opened) = await LoadAsync(inside);
        workshop.Clock.Pass(TimeSpan.FromMinutes(70));
        (await workshop.PostAsync($"loads/{load}/log?name=climate-log", Workshop.Csv(Log(opened, 70)))).Expect(201);

        Assert.Contains(
            "not in this load",
            Why(await workshop.PostAsync($"loads/{load}/close", new { parts = new[] { inside, outside } }), 400),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "named twice",
            Why(await workshop.PostAsync($"loads/{load}/close", new { parts = new[] { inside, inside } }), 400),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "Name the parts",
            Why(await workshop.PostAsync($"loads/{load}/close", new { parts = Array.Empty<string>() }), 400),
            StringComparison.Ordinal
        );
        Assert.Equal("in-work", await workshop.StateOfAsync(inside));
        (await workshop.PostAsync($"loads/{load}/close", new { parts = new[] { inside } })).Expect(200);
        Assert.Contains(
            "closed already",
            (await workshop.PostAsync($"loads/{load}/close", new { parts = new[] { inside } })).Problem(409),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_log_of_the_day_before_does_not_pass_a_load_that_was_open_for_seconds()
    {
        var serial = await PartAsync();
        var (load, _) = await LoadAsync(serial);
        (
            await workshop.PostAsync(
                $"loads/{load}/log?name=climate-log",
                Workshop.Csv(Log(workshop.Clock.GetUtcNow().AddMinutes(-100), 99))
            )
        ).Expect(201);
        workshop.Clock.Pass(TimeSpan.FromSeconds(20));

        var refused = await workshop.PostAsync($"loads/{load}/close", new { });

        Assert.Contains("belongs to another run", Why(refused, 409), StringComparison.Ordinal);
        Assert.Equal("in-work", await workshop.StateOfAsync(serial));
    }

    [Fact]
    public async Task A_soak_recorded_in_one_go_says_when_it_began()
    {
        var serial = await PartAsync();
        var began = workshop.Clock.GetUtcNow();
        workshop.Clock.Pass(TimeSpan.FromMinutes(75));
        object Record(DateTimeOffset? openedAt) =>
            new
            {
                stage = "humid",
                station = "BENCH-1",
                openedAt,
                evidence = new[] { new { name = "climate-log", text = Log(began, 70) } },
            };

        Assert.Contains(
            "openedAt",
            (await workshop.PostAsync($"parts/{serial}/records", Record(null))).Problem(409),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "after its end",
            Why(await workshop.PostAsync($"parts/{serial}/records", Record(workshop.Clock.GetUtcNow().AddMinutes(1))), 400),
            StringComparison.Ordinal
        );
        Assert.Equal("ready", await workshop.StateOfAsync(serial));

        Assert.Equal("pass", (await workshop.PostAsync($"parts/{serial}/records", Record(began))).Expect(201).Text("verdict"));

        var attempt = await AttemptAsync(serial);
        Assert.Equal(began, attempt.At("openedAt").GetDateTimeOffset(), TimeSpan.FromMilliseconds(1));
        var gate = (await workshop.GetAsync($"parts/{serial}/gates")).Expect(200).List().Single(g => g.Text("stage") == "insulation");
        Assert.Equal(Seconds(began.AddMinutes(70 + 15)), Seconds(gate.At("closesAt").GetDateTimeOffset()));
    }

    [Fact]
    public async Task A_stage_that_no_log_judges_has_no_time_at_which_it_began()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var refused = await workshop.PostAsync(
            $"parts/{serial}/records",
            new
            {
                stage = "mount",
                station = "BENCH-1",
                openedAt = workshop.Clock.GetUtcNow(),
            }
        );
        Assert.Contains("has no 'openedAt'", Why(refused, 400), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_bench_page_and_the_gate_name_the_same_end_of_a_window()
    {
        var serial = await PartAsync();
        var (load, opened) = await LoadAsync(serial);
        workshop.Clock.Pass(TimeSpan.FromMinutes(80));
        (await workshop.PostAsync($"loads/{load}/log?name=climate-log", Workshop.Csv(Log(opened, 70)))).Expect(201);
        (await workshop.PostAsync($"loads/{load}/close", new { })).Expect(200);

        var visitor = await Visitor.SignedInAsync(workshop, Workshop.Builder);
        var page = (await visitor.GoAsync("/bench")).Text;

        Assert.Contains(opened.AddMinutes(85).ToString("HH:mm", CultureInfo.InvariantCulture), page, StringComparison.Ordinal);
        Assert.DoesNotContain(opened.AddMinutes(95).ToString("HH:mm", CultureInfo.InvariantCulture), page, StringComparison.Ordinal);
    }

    private async Task<string> PartAsync()
    {
        await workshop.RouteOnceAsync("SOAK-1", "capsule", Route);
        return (await workshop.PostAsync("parts", new { kind = "capsule", model = "SOAK-1" })).Expect(201).Text("serial");
    }

    private async Task<(Guid Id, DateTimeOffset OpenedAt)> LoadAsync(params string[] parts)
    {
        var load = (
            await workshop.PostAsync(
                "loads",
                new
                {
                    stage = "humid",
                    station = "BENCH-1",
                    parts,
                }
            )
        ).Expect(201).Id();
        return (load, (await workshop.GetAsync($"loads/{load}")).Expect(200).At("openedAt").GetDateTimeOffset());
    }

    private async Task<JsonElement> AttemptAsync(string serial)
    {
        var history = (await workshop.GetAsync($"parts/{serial}/history")).Expect(200).List("items");
        var attempt = history.First(h => h.Has("attempt")).Text("attempt");
        return (await workshop.GetAsync($"attempts/{attempt}")).Expect(200);
    }

    private static decimal Dwell(JsonElement closed) => closed.List("results").Single().List("readings").Single().At("value").GetDecimal();

    private static string Why(Reply reply, int status) => reply.Problem(status) + reply.Body;

    private static DateTime Seconds(DateTimeOffset at) =>
        new(at.UtcTicks / TimeSpan.TicksPerSecond * TimeSpan.TicksPerSecond, DateTimeKind.Utc);

    /// <summary>In tolerance from that moment on, a line a minute.</summary>
    private static string Log(DateTimeOffset from, int minutes)
    {
        var csv = new StringBuilder("time,temperature_c,humidity_pct\n");
        for (var minute = 0; minute <= minutes; minute++)
        {
            csv.Append(CultureInfo.InvariantCulture, $"{from.AddMinutes(minute):yyyy-MM-ddTHH:mm:ss.ffffffZ},40,93\n");
        }

        return csv.ToString();
    }
}
