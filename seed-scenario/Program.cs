using System.Diagnostics;
using Spectre.Console;
using Traceability.SeedScenario;

// The demo scenario on its own: enters it over HTTP into a service that runs already and holds nothing but LEAD1.
if (args is not [var address] || !Uri.TryCreate(address.TrimEnd('/') + "/", UriKind.Absolute, out var root))
{
    Console.Error.WriteLine("usage: Traceability.SeedScenario http://127.0.0.1:5080");
    return 2;
}

using var client = new HttpClient { BaseAddress = root, Timeout = TimeSpan.FromMinutes(5) };
using var interrupted = new CancellationTokenSource();
Console.CancelKeyPress += (_, pressed) =>
{
    pressed.Cancel = true;
    interrupted.Cancel();
};
var clock = Stopwatch.StartNew();
try
{
    await AnsiConsole
        .Progress()
        .Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn(), new ElapsedTimeColumn())
        .StartAsync(async bar =>
        {
            var today = DateOnly.FromDateTime(DateTime.UtcNow);
            await DemoScenario.LoadFoundationAsync(client, today, new BarProgress(bar.AddTask("the workshop")), interrupted.Token);
            await DemoScenario.LoadHistoryAsync(client, today, new BarProgress(bar.AddTask("four months of work")), interrupted.Token);
        });
    AnsiConsole.WriteLine($"Loaded in {clock.Elapsed.TotalSeconds:0.0} s.");
    return 0;
}
catch (Exception failure) when (failure is SeedException or HttpRequestException or OperationCanceledException)
{
    Console.Error.WriteLine(failure.Message);
    return 1;
}
