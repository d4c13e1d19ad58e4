using System.Text;
using System.Text.Json;

namespace Traceability.Web.Tests;

/// <summary>The people, benches, instruments, routes and lots of the tests' workshop; all invented.</summary>
internal static class WorkshopSetUp
{
    public static async Task RunAsync(Workshop w)
    {
        await PersonAsync(w, Workshop.Builder, "Bea Builder", "builder");
        await PersonAsync(w, Workshop.OtherBuilder, "Ben Builder", "builder");
        await PersonAsync(w, Workshop.Quality, "Quinn Quality", "quality");
        await PersonAsync(w, Workshop.ServiceDesk, "Sam Service", "service");
        await PersonAsync(w, Workshop.Importer, "Ida Importer", "importer", "builder", "quality");
        await PersonAsync(w, Workshop.Machine, "Bench machine", "instrument");
        foreach (var station in new[] { "BENCH-1", "BENCH-2", "PLATE-1" })
        {
            (await w.PostAsync("stations", new { code = station, title = $"Station {station}" }, Workshop.Lead)).Expect(201);
        }

        await InstrumentAsync(w, "RB-1", "resonance-bench");
        await InstrumentAsync(w, "AN-1", "acoustic-analyser");
        await LotAsync(w, Workshop.Film, "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        await LotAsync(w, Workshop.Ring, "insulating-ring");
        await LotAsync(w, Workshop.Body, "body");
        foreach (var kind in new[] { "diaphragm", "capsule", "unit" })
        {
            await w.RouteAsync(await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "Routes", $"{kind}.yaml")));
        }
    }

    /// <summary>Loads a route and has it approved by the quality lead, or by the workshop lead where the quality lead wrote it.</summary>
    public static async Task<JsonElement> RouteAsync(this Workshop w, string text)
    {
        var loaded = (await w.PostAsync("routes", new StringContent(text, Encoding.UTF8, "text/yaml"), Workshop.Lead)).Expect(201);
        var approver = text.Contains($"author: {Workshop.Quality}\n", StringComparison.Ordinal) ? Workshop.Lead : Workshop.Quality;
        var path = $"routes/{loaded.Text("model")}/{loaded.Text("kind")}/{loaded.Text("revision")}/approval";
        (await w.PostAsync(path, new { reason = "tried on ten parts", pin = Workshop.PinOf(approver) }, approver)).Expect(201);
        return loaded;
    }

    /// <summary>The same, unless the workshop has the route already.</summary>
    public static async Task RouteOnceAsync(this Workshop w, string model, string kind, string text)
    {
        if ((await w.GetAsync($"routes/{model}/{kind}")).Status == System.Net.HttpStatusCode.NotFound)
        {
            await w.RouteAsync(text);
        }
    }

    public static async Task LotAsync(Workshop w, string number, string kind, object? film = null)
    {
        object lot = film is null
            ? new
            {
                number,
                kind,
                supplier = "Invented Supplies",
                supplierLot = $"S-{number}",
                quantity = 100,
                unit = "pcs",
            }
            : new
            {
                number,
                kind,
                supplier = "Invented Films",
                supplierLot = $"S-{number}",
                quantity = 100,
                unit = "m",
                film,
            };
        (await w.PostAsync("lots", lot, Workshop.Quality)).Expect(201);
        (await w.PostAsync($"lots/{number}/release", new { reason = "certificate seen" }, Workshop.Quality)).Expect(200);
    }

    /// <summary>A person who has taken up the code and has the PIN of <see cref="Workshop.PinOf"/>.</summary>
    public static async Task PersonAsync(this Workshop w, string badge, string name, params string[] roles)
    {
        var code = (
            await w.PostAsync(
                "people",
                new
                {
                    badge,
                    name,
                    roles,
                },
                Workshop.Lead
            )
        ).Expect(201).Text("code");
        (
            await w.PostAsync(
                "pins",
                new
                {
                    badge,
                    code,
                    newPin = Workshop.PinOf(badge),
                },
                null
            )
        ).Expect(200);
    }

    private static async Task InstrumentAsync(Workshop w, string code, string kind)
    {
        (
            await w.PostAsync(
                "instruments",
                new
                {
                    code,
                    kind,
                    title = $"{kind} {code}",
                },
                Workshop.Lead
            )
        ).Expect(201);
        var today = DateOnly.FromDateTime(w.Clock.GetUtcNow().UtcDateTime);
        var calibration = new
        {
            calibratedOn = today.AddDays(-100),
            dueOn = today.AddDays(265),
            reference = $"CAL-{code}",
        };
        (await w.PostAsync($"instruments/{code}/calibrations", calibration, Workshop.Quality)).Expect(201);
    }
}
