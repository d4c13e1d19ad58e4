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

    /// <summary>
    /// Fills a database of each size, measures and deletes it; or measures the one in a folder. The growth is seen in one table at the end.
    /// </summary>
    public static async Task<int> RunAsync(string[] sizesOrFolder)
    {
        var measured = new List<(int Units, IReadOnlyList<Measured> Questions)>();
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

                measured.Add(await MeasureAsync(folder));
            }
            finally
            {
                if (filled)
                {
                    Directory.Delete(folder, true);
                }
            }
        }

        Console.WriteLine($"| |{string.Concat(measured.Select(m => $" {m.Units}: database | HTTP |"))} limits |");
        Console.WriteLine($"|---|{string.Concat(Enumerable.Repeat("---|", 2 * measured.Count + 1))}");
        foreach (var (question, n) in measured[0].Questions.Select((m, n) => (m.Question, n)))
        {
            var limits = question.Ask is null ? $"{question.HttpLimitMs} ms" : $"{question.DatabaseLimitMs}, {question.HttpLimitMs} ms";
            var cells = measured.Select(m => $" {m.Questions[n].AtDatabase} | {m.Questions[n].OverHttp} |");
            Console.WriteLine($"| {question.Name} |{string.Concat(cells)} {limits} |");
        }

        return measured.Any(m => m.Questions.Any(q => q.IsOver)) ? 1 : 0;
    }

    private static async Task<(int Units, IReadOnlyList<Measured> Questions)> MeasureAsync(string folder)
    {
        await using var service = await ServiceUnderTest.StartAsync(folder, demo: false);
        await service.SignInAsync(FilledWorkshop.Badge, FilledWorkshop.Pin);
        var connection = new NpgsqlConnectionStringBuilder
        {
            Host = Path.Combine(folder, "run"),
            Username = "traceability_owner",
            Database = "traceability",
            MaxAutoPrepare = 50,
            AutoPrepareMinUsages = 2,
        }.ConnectionString;
        await using var db = new WorkshopContext(WorkshopOptions.For(connection));
        var units = await db.Set<Traceability.Domain.Records.Part>().CountAsync(p => p.Kind == "unit");
        var measured = new List<Measured>();
        foreach (var question in await ScaleQuestions.OfAsync(db))
        {
            var atDatabase = question.Ask is not { } ask
                ? (double?)null
                : await MedianAsync(async () =>
                {
                    await ask(db);
                    db.ChangeTracker.Clear();
                });
            var one = new Measured(question, atDatabase, await MedianAsync(() => GetAsync(service.Http, question.Address)));
            Console.WriteLine($"{units} units, {question.Name}: {one.AtDatabase} at the database, {one.OverHttp} over HTTP");
            measured.Add(one);
        }

        return (units, measured);
    }

    /// <summary>Medians in milliseconds.</summary>
    private sealed record Measured(ScaleQuestion Question, double? DatabaseMs, double HttpMs)
    {
        public bool IsOver => DatabaseMs > Question.DatabaseLimitMs || HttpMs > Question.HttpLimitMs;

        public string AtDatabase => DatabaseMs is { } ms ? Said(ms, Question.DatabaseLimitMs) : "-";

        public string OverHttp => Said(HttpMs, Question.HttpLimitMs);

        private static string Said(double ms, double limit) =>
            string.Create(CultureInfo.InvariantCulture, $"{ms:0.0} ms{(ms > limit ? " OVER" : "")}");
    }

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
