namespace Traceability.Benchmarks;

/// <summary>How long the service takes to be ready, with initdb and without, and what memory it holds with the demonstration loaded.</summary>
internal static class StartBenchmark
{
    public static async Task<int> RunAsync()
    {
        var folder = Directory.CreateTempSubdirectory("traceability-bench-");
        File.SetUnixFileMode(folder.FullName, (UnixFileMode)0b111_101_101);
        await using (var first = await ServiceUnderTest.StartAsync(folder.FullName, demo: false))
        {
            Console.WriteLine($"start to ready, first time, with initdb and migrations: {first.Start.TotalSeconds:0.0} s");
        }

        await using var second = await ServiceUnderTest.StartAsync(folder.FullName, demo: false);
        Console.WriteLine($"start to ready, again: {second.Start.TotalSeconds:0.0} s");
        var other = Directory.CreateTempSubdirectory("traceability-bench-");
        File.SetUnixFileMode(other.FullName, (UnixFileMode)0b111_101_101);
        var began = System.Diagnostics.Stopwatch.StartNew();
        await using var demo = await ServiceUnderTest.StartAsync(other.FullName, demo: true);
        Console.WriteLine($"start to ready with the demonstration's foundation: {demo.Start.TotalSeconds:0.0} s");
        await DemoLoadedAsync(other.FullName);
        Console.WriteLine($"demonstration loaded after {began.Elapsed.TotalSeconds:0} s; resident memory of the service {demo.ResidentMegabytes} MB");
        return 0;
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
