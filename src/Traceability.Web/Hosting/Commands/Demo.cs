using Spectre.Console;
using Traceability.SeedScenario;

namespace Traceability.Web.Hosting.Commands;

/// <summary><c>demo</c>: loads the seed scenario into an empty store and ends; with a progress bar.</summary>
public sealed class Demo : IProgress<SeedProgress>, IDisposable
{
    private readonly Progress progress = AnsiConsole.Progress();
    private readonly TaskCompletionSource ended = new();
    private readonly Task display;
    private ProgressTask? bar;

    /// <summary>Starts the bar.</summary>
    public Demo() =>
        display = progress.StartAsync(async context =>
        {
            bar = context.AddTask("loading the demonstration");
            await ended.Task;
        });

    public void Report(SeedProgress value)
    {
        if (bar is { } b)
        {
            (b.MaxValue, b.Value, b.Description) = (Math.Max(1, value.Total), value.Done, value.Doing);
        }
    }

    public void Dispose()
    {
        ended.TrySetResult();
        display.Wait(TimeSpan.FromSeconds(2));
    }
}
