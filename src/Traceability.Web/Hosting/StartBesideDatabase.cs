using Microsoft.AspNetCore.Hosting.Server;
using Traceability.Web.Http;

namespace Traceability.Web.Hosting;

/// <summary>The web server starts beside the database, so that neither waits for the other; until both are there, it says so.</summary>
public static class StartBesideDatabase
{
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(60);

    private const string KeysAtStart = "DataProtectionHostedService";

    /// <summary>Must come after everything that adds services.</summary>
    public static void AddStartBesideDatabase(this WebApplicationBuilder builder)
    {
        // The framework would read the keys of cookies and forms before their table is there. They are read when first needed instead.
        builder.Services.Remove(builder.Services.Single(s => s.ImplementationType?.Name == KeysAtStart));
        // Before the database, which holds up those behind it until it is ready.
        builder.Services.Insert(0, ServiceDescriptor.Singleton<IHostedService, FirstRequest>());
    }

    /// <summary>
    /// Until the database is migrated only the service's health is told, and everybody else is asked to come again; while the demonstration
    /// lays its foundation, some seconds of the very first start, they wait.
    /// </summary>
    public static async Task RefuseUntilReadyAsync(HttpContext context, RequestDelegate next)
    {
        if (context.Request.Path.StartsWithSegments(Addresses.Health) || await IsThereAsync(context))
        {
            await next(context);
            return;
        }

        context.Response.Headers.RetryAfter = "1";
        await ProblemAnswers.Of(ProblemKinds.Starting).ExecuteAsync(context);
    }

    private static async Task<bool> IsThereAsync(HttpContext context)
    {
        if (!context.RequestServices.GetRequiredService<WorkshopDatabase>().Migrated)
        {
            return false;
        }

        var foundation = context.RequestServices.GetRequiredService<Foundation>();
        if (!foundation.Laid.IsCompleted && !foundation.IsFor(context.Request))
        {
            await Task.WhenAny(foundation.Laid, Task.Delay(LongestWait, context.RequestAborted));
            return foundation.Laid.IsCompleted;
        }

        return true;
    }

    /// <summary>
    /// Asks the service for its health once, while the database still starts: routes are built and the ways of a request are compiled at
    /// the first one, which takes half a second.
    /// </summary>
    private sealed class FirstRequest(IServer server, ILogger<WorkshopDatabase> log) : IHostedLifecycleService
    {
        public async Task StartedAsync(CancellationToken cancellationToken)
        {
            if (server.LocalAddress() is not { } address)
            {
                return;
            }

            try
            {
                using var http = new HttpClient { BaseAddress = address, Timeout = TimeSpan.FromSeconds(10) };
                using var answer = await http.GetAsync(Addresses.Health + "/live", cancellationToken);
            }
            catch (Exception e) when (e is HttpRequestException or TaskCanceledException)
            {
                // It only saves time: with a certificate that this machine does not trust, the service serves all the same.
                log.LogInformation("the service did not reach itself at {Address}: {Reason}", address, e.Message);
            }
        }

        public Task StartingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

        public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

        public Task StoppingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

        public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

        public Task StoppedAsync(CancellationToken cancellationToken) => Task.CompletedTask;
    }
}
