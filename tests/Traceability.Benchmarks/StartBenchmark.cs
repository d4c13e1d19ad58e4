using System.Diagnostics;
using System.Globalization;

namespace Traceability.Benchmarks;

/// <summary>
/// How long what run.sh starts takes to be ready, in an empty folder and again, how long the demonstration's people wait at the first
/// start, and what memory it holds with the demonstration loaded. The exit code is 1 when a median or the memory is over its limit.
/// </summary>
internal static class StartBenchmark
{
    private const int Runs = 5;
    private const double FirstLimitSeconds = 6;
    private const double AgainLimitSeconds = 3;
    private const long MemoryLimitMegabytes = 350;

    public static async Task<int> RunAsync()
    {
        var program = await PublishedProgram.FindAsync();
        var first = new List<double>();
        var signedIn = new List<double>();
        var again = new List<double>();
        for (var run = 0; run < Runs; run++)
        {
            await WithFolderAsync(async folder =>
            {
                first.Add(await OnceAsync(folder, program, signedIn.Add));
                again.Add(await OnceAsync(folder, program, _ => { }));
            });
        }

        var kept = Told("first start with initdb, to ready", first, FirstLimitSeconds);
        Told("of it, until the first of the demonstration's people is signed in", signedIn, null);
        kept &= Told("start again", again, AgainLimitSeconds);
        await WithFolderAsync(async folder =>
        {
            await using var demo = await ServiceUnderTest.StartAsync(folder, demo: true, program);
            await DemoLoadedAsync(folder);
            var megabytes = demo.ResidentMegabytes;
            Console.WriteLine($"resident memory with the demonstration loaded: {megabytes} MB (limit {MemoryLimitMegabytes} MB)");
            kept &= megabytes <= MemoryLimitMegabytes;
        });
        return kept ? 0 : 1;
    }

    private static async Task<double> OnceAsync(string folder, string program, Action<double> signedIn)
    {
        await using var service = await ServiceUnderTest.StartAsync(folder, demo: true, program);
        var watch = Stopwatch.StartNew();
        await service.SignInAsync("LEAD1", "5555");
        signedIn((service.Start + watch.Elapsed).TotalSeconds);
        return service.Start.TotalSeconds;
    }

    /// <summary>Prints the figures; true when the median is inside its limit, or none was set.</summary>
    private static bool Told(string what, List<double> seconds, double? limit)
    {
        var sorted = seconds.Order().ToList();
        var each = string.Join(' ', seconds.Select(s => s.ToString("0.00", CultureInfo.InvariantCulture)));
        var median = sorted[sorted.Count / 2];
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{what}: {each} s; minimum {sorted[0]:0.00}, median {median:0.00}, maximum {sorted[^1]:0.00}"
                    + $" s{(limit is null ? "" : $" (limit {limit:0} s){(median > limit ? " OVER" : "")}")}"
            )
        );
        return limit is null || median <= limit;
    }

    private static async Task WithFolderAsync(Func<string, Task> use)
    {
        var folder = Directory.CreateTempSubdirectory("traceability-bench-");
        File.SetUnixFileMode(folder.FullName, (UnixFileMode)0b111_101_101);
        try
        {
            await use(folder.FullName);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    public static async Task DemoLoadedAsync(string folder)
    {
        for (var waited = 0; waited < 600; waited++)
        {
            await Task.Delay(1000);
            var log = Directory.EnumerateFiles(Path.Combine(folder, "logs"), "*.log").Order().LastOrDefault();
            if (log is not null)
            {
                await using var file = new FileStream(log, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
                using var reader = new StreamReader(file);
                var text = await reader.ReadToEndAsync();
                if (text.Contains("the demonstration workshop is loaded", StringComparison.Ordinal))
                {
                    return;
                }

                if (text.Contains("could not be loaded", StringComparison.Ordinal))
                {
                    throw new InvalidOperationException("the demonstration could not be loaded");
                }
            }
        }

        throw new TimeoutException("the demonstration did not load within 10 minutes");
    }
}
