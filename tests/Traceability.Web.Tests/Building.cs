using System.Text.Json;

namespace Traceability.Web.Tests;

/// <summary>What builders do in the tests' workshop, in one word each.</summary>
public static class Building
{
    public static async Task<string> RegisterAsync(this Workshop w, string kind, string? carrier = null) => (
            await w.PostAsync(
                "parts",
                new
                {
                    kind,
                    model = Workshop.Model,
                    carrier,
                }
            )
        ).Expect(201).Text("serial");

    /// <summary>A diaphragm mounted from the film lot, waiting for its cure.</summary>
    public static async Task<string> MountAsync(this Workshop w, string film = Workshop.Film, string? carrier = null)
    {
        var serial = await w.RegisterAsync("diaphragm", carrier);
        await w.RecordAsync(
            serial,
            "mount",
            new
            {
                readings = new[] { new { characteristic = "coarseHz", value = 850 } },
                fittings = new[] { new { position = "film", lot = film } },
            }
        );
        return serial;
    }

    /// <summary>Diaphragms cured together in one load; an hour passes.</summary>
    public static async Task CureAsync(this Workshop w, params string[] serials)
    {
        var load = (
            await w.PostAsync(
                "loads",
                new
                {
                    stage = "cure",
                    station = "PLATE-1",
                    parts = serials,
                }
            )
        ).Expect(201).Id();
        (await w.PostAsync($"loads/{load}/log", Workshop.Csv(w.LogOfNow()))).Expect(201);
        w.Clock.Pass(TimeSpan.FromMinutes(61));
        (await w.PostAsync($"loads/{load}/close", new { })).Expect(200);
    }

    /// <summary>A finished diaphragm of that resonance.</summary>
    public static async Task<string> DiaphragmAsync(this Workshop w, decimal ringHz = 900, string film = Workshop.Film)
    {
        var serial = await w.MountAsync(film);
        await w.CureAsync(serial);
        await w.VerifyAsync(serial, ringHz);
        return serial;
    }

    public static Task<JsonElement> VerifyAsync(this Workshop w, string serial, decimal ringHz) =>
        w.RecordAsync(
            serial,
            "verify",
            new { instruments = new[] { "RB-1" }, readings = new[] { new { characteristic = "ringHz", value = ringHz } } }
        );

    /// <summary>A finished capsule of two diaphragms.</summary>
    public static async Task<string> CapsuleAsync(this Workshop w, string? front = null, string? rear = null)
    {
        var serial = await w.RegisterAsync("capsule");
        front ??= await w.DiaphragmAsync();
        rear ??= await w.DiaphragmAsync();
        object[] fittings =
        [
            new { position = "front", child = front },
            new { position = "rear", child = rear },
            new { position = "ring", lot = Workshop.Ring },
        ];
        await w.RecordAsync(serial, "stack", new { fittings });
        await w.RecordAsync(
            serial,
            "capacitance",
            new
            {
                readings = new[]
                {
                    new { characteristic = "capacitancePf", value = "70.50" },
                    new { characteristic = "roomHumidityPct", value = "45" },
                },
            }
        );
        return serial;
    }

    /// <summary>A finished unit around a capsule; the other builder inspects it.</summary>
    public static async Task<string> UnitAsync(
        this Workshop w,
        string? capsule = null,
        string builder = Workshop.Builder,
        string inspector = Workshop.OtherBuilder
    )
    {
        var serial = await w.RegisterAsync("unit");
        object[] fittings =
        [
            new { position = "capsule", child = capsule ?? await w.CapsuleAsync() },
            new { position = "body", lot = Workshop.Body },
        ];
        await w.RecordAsync(serial, "assemble", new { fittings }, builder);
        await w.TestAsync(serial, "14.20", builder, inspector);
        return serial;
    }

    /// <summary>Another capsule in the place of one that was taken out, and every later stage again.</summary>
    public static async Task FinishAsync(this Workshop w, string unit, string capsule, string sensitivity)
    {
        await w.RecordAsync(unit, "assemble", new { fittings = new[] { new { position = "capsule", child = capsule } } });
        await w.TestAsync(unit, sensitivity);
    }

    private static async Task TestAsync(
        this Workshop w,
        string unit,
        string sensitivity,
        string builder = Workshop.Builder,
        string inspector = Workshop.OtherBuilder
    )
    {
        await w.RecordAsync(
            unit,
            "final-acoustic",
            new
            {
                instruments = new[] { "AN-1" },
                readings = new[] { new { characteristic = "sensitivityCardioidMvPa", value = sensitivity } },
                evidence = new[]
                {
                    new
                    {
                        name = "cardioid",
                        mediaType = "text/csv",
                        text = Workshop.FlatResponse,
                    },
                },
            },
            builder
        );
        await w.RecordAsync(
            unit,
            "inspection",
            new { readings = new[] { new { characteristic = "surfaceFaults", value = 0 } } },
            inspector
        );
    }

    public static async Task<JsonElement> RecordAsync(
        this Workshop w,
        string serial,
        string stage,
        object more,
        string badge = Workshop.Builder
    )
    {
        var body = JsonSerializer.SerializeToNode(more)!.AsObject();
        body["stage"] = stage;
        body["station"] = "BENCH-1";
        return (await w.PostAsync($"parts/{serial}/records", body, badge)).Expect(201);
    }

    public static async Task<Guid> OpenAsync(
        this Workshop w,
        string serial,
        string stage,
        string station = "BENCH-1",
        params string[] instruments
    ) => (
            await w.PostAsync(
                $"parts/{serial}/attempts",
                new
                {
                    stage,
                    station,
                    instruments,
                }
            )
        ).Expect(201).Id();

    public static async Task<string> StateOfAsync(this Workshop w, string serial) =>
        (await w.GetAsync($"parts/{serial}")).Expect(200).Text("state");

    /// <summary>A climate log that runs over the next hour, as the plate's logger would give it.</summary>
    public static string LogOfNow(this Workshop w)
    {
        var now = w.Clock.GetUtcNow();
        return "time,temperature_c,humidity_pct\n"
            + $"{now:yyyy-MM-dd'T'HH:mm:ss'Z'},60.0,20\n{now.AddMinutes(60):yyyy-MM-dd'T'HH:mm:ss'Z'},60.1,20\n";
    }
}
