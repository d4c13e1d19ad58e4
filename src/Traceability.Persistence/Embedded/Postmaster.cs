namespace Traceability.Persistence.Embedded;

/// <summary>A running server process, started by us or taken over; <c>Exited</c> completes when it is gone.</summary>
internal sealed record Postmaster(int ProcessId, Task Exited, bool Adopted)
{
    private static readonly TimeSpan AdoptedPoll = TimeSpan.FromMilliseconds(100);

    /// <summary>Only a parent is told of an exit; somebody else's child has to be watched.</summary>
    public static Postmaster Adopt(int pid) => new(pid, WatchAsync(pid), Adopted: true);

    /// <summary>Fast shutdown: open transactions are rolled back, everything committed is written.</summary>
    public async Task StopAsync(TimeSpan patience)
    {
        await Command.RunAsync(["/bin/sh", "-c", $"kill -INT {ProcessId}"], CancellationToken.None);
        await Exited.WaitAsync(patience);
    }

    private static async Task WatchAsync(int pid)
    {
        while (PostmasterFile.IsAlive(pid))
            await Task.Delay(AdoptedPoll);
    }
}
