using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Routes.Files;
using Traceability.Domain.Stages;
using Traceability.Persistence.Model;
using Traceability.SeedScenario;
using Traceability.Web.Features.Access;
using Traceability.Web.Features.Setup.People;
using Traceability.Web.Features.Shared;

namespace Traceability.Web.Hosting;

/// <summary>
/// Loads the invented demonstration workshop into an empty store, through the public API like any client. People, instruments, routes and
/// lots come first, and whoever asks for anything waits for them; the history of four months follows while the service already answers.
/// </summary>
public sealed class Demonstration(
    IServiceProvider services,
    IServer server,
    IHostApplicationLifetime lifetime,
    CurrentWorkshop workshop,
    TimeProvider clock,
    DemonstrationWish wish,
    Foundation foundation,
    ILogger<Demonstration> log
) : BackgroundService
{
    /// <summary>How loading went; set when it has ended.</summary>
    public bool Failed { get; private set; }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (wish.Asked)
        {
            Warm();
        }

        try
        {
            await StartedAsync(stoppingToken);
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // The service did not start, and has said why.
            return;
        }

        if (wish.Asked)
        {
            await LoadAsync(stoppingToken);
        }
        else
        {
            await OfferFirstAccountAsync(stoppingToken);
        }

        if (wish.EndAfterwards)
        {
            lifetime.StopApplication();
        }
    }

    /// <summary>
    /// While the database still starts: reads the files and goes the first ways once, so that they are compiled when they are needed.
    /// </summary>
    private static void Warm()
    {
        foreach (var route in DemoScenario.RouteFiles().Take(2))
        {
            RouteText.Read(route, StageMethods.Requirements);
        }

        _ = PinHash.Of("0000");
    }

    private async Task LoadAsync(CancellationToken cancellation)
    {
        try
        {
            if (!await MakeWorkshopLeadAsync(cancellation))
            {
                log.LogInformation("the store holds data already: the demonstration was not loaded");
                foundation.Lay();
                return;
            }

            using var http = new HttpClient { BaseAddress = server.LocalAddress(), Timeout = TimeSpan.FromMinutes(2) };
            foundation.Let(http);
            var today = workshop.Calendar.DayOf(clock.GetUtcNow());
            var progress = wish.Progress ?? new LogProgress(log);
            await DemoScenario.LoadFoundationAsync(http, today, progress, cancellation);
            foundation.Lay();
            await DemoScenario.LoadHistoryAsync(http, today, progress, cancellation);
            // Four months of work went through within the minute. Nobody works like that again, so what it took is given back.
            GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
            log.LogInformation("the demonstration workshop is loaded");
        }
        catch (Exception e) when (e is SeedException or HttpRequestException)
        {
            Failed = true;
            foundation.Lay();
            log.LogError(e, "the demonstration could not be loaded whole; what was loaded is kept");
        }
    }

    private async Task<bool> MakeWorkshopLeadAsync(CancellationToken cancellation)
    {
        await using var scope = services.CreateAsyncScope();
        var keys = scope.ServiceProvider.GetRequiredService<FirstAccountKey>();
        if (!await keys.IsNeededAsync(cancellation))
        {
            return false;
        }

        // Said before anybody is known, because only a demonstration takes PINs such as these.
        await scope
            .ServiceProvider.GetRequiredService<WorkshopContext>()
            .Database.ExecuteSqlAsync(
                $"""
                insert into workshop_settings (name, value) values ({WorkshopSettings.Demonstration}, 'yes') on conflict do nothing
                """,
                cancellation
            );
        await scope
            .ServiceProvider.GetRequiredService<MakeFirstAccount>()
            .RunAsync(new(await keys.MakeAsync(cancellation), "LEAD1", "Ottilie Farnhaven", "5555"), cancellation);
        return true;
    }

    private async Task OfferFirstAccountAsync(CancellationToken cancellation)
    {
        await using var scope = services.CreateAsyncScope();
        var keys = scope.ServiceProvider.GetRequiredService<FirstAccountKey>();
        if (server.LocalAddress() is { } address && await keys.IsNeededAsync(cancellation))
        {
            // To the console alone, not through the log: the key must not end in a log file.
            Console.WriteLine(
                "Nobody is known here yet. Make the first account, once:"
                    + $" {new Uri(address, $"/first-account?key={await keys.MakeAsync(cancellation)}")}"
            );
        }
    }

    private Task StartedAsync(CancellationToken cancellation)
    {
        var started = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        lifetime.ApplicationStarted.Register(started.SetResult);
        return started.Task.WaitAsync(cancellation);
    }

    /// <summary>A line in the log for every tenth of the way.</summary>
    private sealed class LogProgress(ILogger log) : IProgress<SeedProgress>
    {
        private int tenths = -1;

        public void Report(SeedProgress value)
        {
            var now = value.Done * 10 / Math.Max(1, value.Total);
            if (Interlocked.Exchange(ref tenths, now) != now)
            {
                log.LogInformation("demonstration: {Percent} % ({Doing})", now * 10, value.Doing);
            }
        }
    }
}

/// <summary>Whether the demonstration was asked for on the command line, and what to do after it.</summary>
public sealed record DemonstrationWish(bool Asked, bool EndAfterwards, IProgress<SeedProgress>? Progress);
