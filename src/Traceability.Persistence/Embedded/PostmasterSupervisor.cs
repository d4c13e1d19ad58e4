using Microsoft.Extensions.Logging;

namespace Traceability.Persistence.Embedded;

/// <summary>Keeps a server running: when it ends without being asked to, it is started again.</summary>
internal sealed class PostmasterSupervisor : IAsyncDisposable
{
    private static readonly TimeSpan StopPatience = TimeSpan.FromSeconds(60);
    private static readonly TimeSpan PauseAfterFailure = TimeSpan.FromSeconds(5);

    private readonly PostmasterLauncher launcher;
    private readonly ILogger log;
    private readonly CancellationTokenSource stopping = new();
    private readonly Task supervision;

    private PostmasterSupervisor(PostmasterLauncher launcher, Postmaster first, ILogger log)
    {
        this.launcher = launcher;
        this.log = log;
        Current = first;
        supervision = SuperviseAsync();
    }

    public Postmaster Current { get; private set; }

    public int Restarts { get; private set; }

    public static async Task<PostmasterSupervisor> StartAsync(PostmasterLauncher launcher, ILogger log, CancellationToken cancellation) =>
        new(launcher, await launcher.ObtainAsync(cancellation), log);

    public async ValueTask DisposeAsync()
    {
        if (stopping.IsCancellationRequested)
            return;
        await stopping.CancelAsync();
        await supervision;
        if (!Current.Exited.IsCompleted)
        {
            await Current.StopAsync(StopPatience);
            log.LogInformation("PostgreSQL stopped");
        }

        stopping.Dispose();
    }

    private async Task SuperviseAsync()
    {
        try
        {
            while (true)
            {
                await Current.Exited.WaitAsync(stopping.Token);
                log.LogWarning("PostgreSQL (process {Pid}) ended; starting it again", Current.ProcessId);
                Current = await RestartAsync();
                Restarts++;
                log.LogWarning("PostgreSQL serves again (process {Pid})", Current.ProcessId);
            }
        }
        catch (OperationCanceledException)
        {
            // We are being stopped.
        }
    }

    private async Task<Postmaster> RestartAsync()
    {
        while (true)
        {
            try
            {
                return await launcher.ObtainAsync(stopping.Token);
            }
            catch (Exception e) when (e is not OperationCanceledException)
            {
                // A full disk or the like: somebody may mend it, so go on trying.
                log.LogError("PostgreSQL cannot be started again: {Reason}", e.Message);
                await Task.Delay(PauseAfterFailure, stopping.Token);
            }
        }
    }
}
