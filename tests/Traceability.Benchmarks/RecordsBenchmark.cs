using System.Diagnostics;
using System.Net.Http.Json;

namespace Traceability.Benchmarks;

/// <summary>
/// The median time of one station record over HTTP with one client, beside pgbench doing the same statements on the same cluster in the
/// same run. Read the ratio: the machine's noise is in both.
/// </summary>
internal static class RecordsBenchmark
{
    private const int WarmUp = 600;
    private const int Measured = 400;
    private const string Stage = "receipt";

    /// <summary>On a fresh demonstration workshop, or on one that lies loaded in a folder.</summary>
    public static async Task<int> RunAsync(string? loaded)
    {
        var folder = loaded ?? FillBenchmark.Folder();
        try
        {
            await using var service = await ServiceUnderTest.StartAsync(folder, demo: loaded is null);
            if (loaded is null)
            {
                await StartBenchmark.DemoLoadedAsync(folder);
            }

            await service.SignInAsync("BUILD1", "1111");
            await MeasureAsync(service);
        }
        finally
        {
            if (loaded is null)
            {
                Directory.Delete(folder, true);
            }
        }

        return 0;
    }

    private static async Task MeasureAsync(ServiceUnderTest service)
    {
        // Both write the first record of parts that were just registered: the service of the first lot of them, pgbench of the second.
        for (var i = 0; i < WarmUp + Measured + PgBench.Transactions; i++)
        {
            await PostAsync(
                service.Http,
                "/api/v1/parts",
                new
                {
                    kind = "board-set",
                    model = "TARN-2",
                    serial = $"BEN-{i}",
                }
            );
        }

        var (station, lot) = (await FirstStationAsync(service.Http), await PanelLotAsync(service.Http));
        var times = new List<double>();
        for (var i = 0; i < WarmUp + Measured; i++)
        {
            var watch = Stopwatch.StartNew();
            await PostAsync(
                service.Http,
                $"/api/v1/parts/BEN-{i}/records",
                new
                {
                    stage = Stage,
                    station,
                    fittings = new[] { new { position = "panel", lot } },
                    readings = new[] { new { characteristic = "visibleFaults", value = 0 } },
                }
            );
            times.Add(watch.Elapsed.TotalMilliseconds);
        }

        var http = Median(times.Skip(WarmUp));
        var pgbench = await PgBench.MedianMillisecondsAsync(service.Folder, firstPart: WarmUp + Measured, station, lot);
        Console.WriteLine($"POST /parts/{{serial}}/records, 1 client, median of {Measured} after {WarmUp}: {http:0.0} ms");
        Console.WriteLine($"pgbench, same statements, 1 client, prepared, median: {pgbench:0.0} ms");
        Console.WriteLine($"ratio HTTP / pgbench: {http / pgbench:0.00}");
    }

    public static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        return sorted.Length % 2 == 1 ? sorted[sorted.Length / 2] : (sorted[sorted.Length / 2 - 1] + sorted[sorted.Length / 2]) / 2;
    }

    private static async Task<string> FirstStationAsync(HttpClient http) =>
        (await http.GetFromJsonAsync<System.Text.Json.JsonElement>("/api/v1/stations"))
            .GetProperty("items")[0]
            .GetProperty("code")
            .GetString()!;

    private static async Task<string> PanelLotAsync(HttpClient http) =>
        (await http.GetFromJsonAsync<System.Text.Json.JsonElement>("/api/v1/lots?kind=board-panel&state=released"))
            .GetProperty("items")[0]
            .GetProperty("number")
            .GetString()!;

    private static async Task PostAsync(HttpClient http, string path, object body)
    {
        using var answer = await http.PostAsJsonAsync(path, body);
        if (!answer.IsSuccessStatusCode)
        {
            throw new InvalidOperationException($"{path}: {(int)answer.StatusCode} {await answer.Content.ReadAsStringAsync()}");
        }
    }
}
