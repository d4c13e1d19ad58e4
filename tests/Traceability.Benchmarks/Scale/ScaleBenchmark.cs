using System.Diagnostics;
using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Traceability.Migrations;
using Traceability.Persistence.Model;

namespace Traceability.Benchmarks;

/// <summary>
/// What the quality lead asks, over databases of several sizes: at the database (the readers of the service called over the socket, so the
/// driver's share is in it), and over HTTP. Each beside its limit; the exit code is 1 when one is over.
/// </summary>
internal static class ScaleBenchmark
{
    private const int WarmUp = 5;
    private const int Runs = 21;

    private static readonly TimeSpan Slow = TimeSpan.FromSeconds(5);

    /// <summary>Fills a database of each size, measures and deletes it; or measures the one in a folder.</summary>
    public static async Task<int> RunAsync(string[] sizesOrFolder)
    {
        var over = 0;
        foreach (var asked in sizesOrFolder)
        {
            var filled = int.TryParse(asked, CultureInfo.InvariantCulture, out var units);
            var folder = filled ? FillBenchmark.Folder() : asked;
            try
            {
                if (filled)
                {
                    await FillBenchmark.FillAsync(new(units), folder);
                }

                over += await MeasureAsync(folder);
            }
            finally
            {
                if (filled)
                {
                    Directory.Delete(folder, true);
                }
            }
        }

        return over == 0 ? 0 : 1;
    }

    private static async Task<int> MeasureAsync(string folder)
    {
        await using var service = await ServiceUnderTest.StartAsync(folder, demo: false);
        await service.SignInAsync(FilledWorkshop.Badge, FilledWorkshop.Pin);
        var connection = new NpgsqlConnectionStringBuilder { Host = Path.Combine(folder, "run"), Username = "traceability_owner", Database = "traceability", MaxAutoPrepare = 50, AutoPrepareMinUsages = 2 }.ConnectionString;
        await using var db = new WorkshopContext(WorkshopOptions.For(connection));
        var units = await db.Set<Traceability.Domain.Records.Part>().CountAsync(p => p.Kind == "unit");
        Console.WriteLine($"| {units} units | at the database | limit | over HTTP | limit |");
        Console.WriteLine("|---|---|---|---|---|");
        var over = 0;
        foreach (var question in await ScaleQuestions.OfAsync(db))
        {
            var atDatabase = question.Ask is not { } ask ? (double?)null : await MedianAsync(async () =>
            {
                await ask(db);
                db.ChangeTracker.Clear();
            });
            var overHttp = await MedianAsync(() => GetAsync(service.Http, question.Address));
            over += (atDatabase > question.DatabaseLimitMs ? 1 : 0) + (overHttp > question.HttpLimitMs ? 1 : 0);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {question.Name} | {(atDatabase is { } ms ? $"{Said(ms, question.DatabaseLimitMs)} | {question.DatabaseLimitMs} ms" : "- | -")} | {Said(overHttp, question.HttpLimitMs)} | {question.HttpLimitMs} ms |"));
        }

        return over;
    }

    private static string Said(double ms, double limit) => string.Create(CultureInfo.InvariantCulture, $"{ms:0.0} ms{(ms > limit ? " OVER" : "")}");

    private static async Task GetAsync(HttpClient http, string address)
    {
        using var answer = await http.GetAsync(new Uri(address, UriKind.Relative));
        var text = await answer.Content.ReadAsStringAsync();
        if (!answer.IsSuccessStatusCode)
        {
            throw new InvalidOperationException($"{address}: {(int)answer.StatusCode} {text}");
        }
    }

    private static async Task<double> MedianAsync(Func<Task> work)
    {
        var times = new List<double>();
        for (var run = 0; run < WarmUp + Runs; run++)
        {
            var watch = Stopwatch.StartNew();
            await work();
            times.Add(watch.Elapsed.TotalMilliseconds);
            if (run == WarmUp && watch.Elapsed > Slow)
            {
                // What takes seconds is not asked 26 times: the figure is that of one run.
                break;
            }
        }

        return RecordsBenchmark.Median(times.Skip(WarmUp));
    }
}
