using System.Diagnostics;
using Microsoft.Extensions.Logging;
using Npgsql;

namespace Traceability.Persistence.Embedded;

/// <summary>Gets a running server on the cluster: the one a killed owner left behind, or a new one.</summary>
internal sealed class PostmasterLauncher(
    ClusterFolder folder,
    ServerPrograms programs,
    ServerUser user,
    bool durable,
    string maintenance,
    ILogger log
)
{
    private const long LogRotatesAtBytes = 8 * 1024 * 1024;
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(20);
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    public async Task<Postmaster> ObtainAsync(CancellationToken cancellation)
    {
        for (var clock = Stopwatch.StartNew(); ; await Task.Delay(Pause, cancellation))
        {
            if (PostmasterFile.Read(folder.Data) is { } left && left.IsAliveOn(folder.Data))
            {
                // Either it is still shutting down after its owner died, and will soon be gone, or it serves and is taken over.
                if (left.IsReady && await AnswersAsync(cancellation))
                    return Postmaster.Adopt(left.ProcessId);
                if (clock.Elapsed > Patience)
                    throw new EmbeddedPostgresException(
                        $"A PostgreSQL server (process {left.ProcessId}) holds {folder.Data} and neither answers nor ends: end it with"
                            + $" kill -INT {left.ProcessId}."
                    );
                continue;
            }

            await ForgetStaleFileAsync(cancellation);
            if (await LaunchAsync(cancellation) is { } started)
                return started;
            // The children of a killed server need a moment to notice; until then a new one is refused.
            if (clock.Elapsed > Patience)
                throw new EmbeddedPostgresException($"PostgreSQL does not start ({LastLogLine()}); see {folder.Log}.");
        }
    }

    private async Task<Postmaster?> LaunchAsync(CancellationToken cancellation)
    {
        if (File.Exists(folder.Log) && new FileInfo(folder.Log).Length > LogRotatesAtBytes)
            File.Move(folder.Log, folder.Log + ".1", overwrite: true);
        var start = Command.StartInfo(
            ["/bin/sh", "-c", "exec \"$@\" >>\"$LOG\" 2>&1 </dev/null", "sh", ServerUser.Tool("setsid"), .. ServerCommand()],
            programs.Libraries
        );
        start.RedirectStandardOutput = start.RedirectStandardError = false;
        start.Environment["LOG"] = folder.Log;

        var started = new TaskCompletionSource<int>(TaskCreationOptions.RunContinuationsAsynchronously);
        var exited = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        // The kernel sends the parent-death signal when the forking *thread* ends, so this one lives as long as the server.
        new Thread(() => Parent(start, started, exited)) { IsBackground = true, Name = "postmaster" }.Start();

        var postmaster = new Postmaster(await started.Task, exited.Task, Adopted: false);
        try
        {
            while (!exited.Task.IsCompleted)
            {
                if (PostmasterFile.Read(folder.Data) is { IsReady: true } file && file.ProcessId == postmaster.ProcessId)
                    return postmaster;
                // After a crash it first repairs itself, which may take long: wait as long as it lives.
                await Task.Delay(TimeSpan.FromMilliseconds(5), cancellation);
            }
        }
        catch (OperationCanceledException)
        {
            await postmaster.StopAsync(Patience);
            throw;
        }

        return null;
    }

    private static void Parent(ProcessStartInfo start, TaskCompletionSource<int> started, TaskCompletionSource exited)
    {
        try
        {
            using var process = Process.Start(start)!;
            started.SetResult(process.Id);
            process.WaitForExit();
        }
        catch (Exception e) when (started.TrySetException(e))
        {
            // Told to the one who waits for the start.
        }
        finally
        {
            exited.SetResult();
        }
    }

    // Own session: Ctrl-C at the terminal reaches the service only. INT at our death: a fast, clean shutdown.
    private IEnumerable<string> ServerCommand() =>
        user.Run(
            [
                programs["postgres"],
                "-D",
                folder.Data,
                "-k",
                folder.Socket,
                "-p",
                "5432",
                "-c",
                "listen_addresses=",
                "-c",
                "unix_socket_permissions=0700",
                "-c",
                "logging_collector=off",
                "-c",
                "timezone=UTC",
                "-c",
                "log_timezone=UTC",
                // Short look-ups by key: compiling them costs more than running them.
                "-c",
                "jit=off",
                // The data are on a solid-state disk or in memory: a look-up by key costs little more than the next row. Analyses sort some
                // 100 000 rows.
                "-c",
                "random_page_cost=1.1",
                "-c",
                "work_mem=16MB",
                .. durable
                    ? Array.Empty<string>()
                    : ["-c", "fsync=off", "-c", "synchronous_commit=off", "-c", "full_page_writes=off", "-c", "max_connections=300"],
            ],
            "--pdeathsig",
            "INT"
        );

    private async Task<bool> AnswersAsync(CancellationToken cancellation)
    {
        try
        {
            await using var connection = new NpgsqlConnection(maintenance);
            await connection.OpenAsync(cancellation);
            await using var ask = new NpgsqlCommand("show data_directory", connection);
            return (string?)await ask.ExecuteScalarAsync(cancellation) == folder.Data;
        }
        catch (NpgsqlException)
        {
            return false;
        }
    }

    /// <summary>
    /// A pid file whose number was given to another process stops PostgreSQL from starting. It is removed only when nobody works
    /// in the cluster's folder, because it also guards against children that outlived a killed server.
    /// </summary>
    private async Task ForgetStaleFileAsync(CancellationToken cancellation)
    {
        if (PostmasterFile.Read(folder.Data) is not { } left || !PostmasterFile.IsTaken(left.ProcessId))
            return;
        var atWork = await Command.RunAsync(
            user.Run([
                "/bin/sh",
                "-c",
                "for p in /proc/[0-9]*; do [ \"$(readlink $p/cwd 2>/dev/null)\" != \"$1\" ] || exit 1; done",
                "sh",
                folder.Data,
            ]),
            cancellation
        );
        if (!atWork.Ok)
            return;
        log.LogWarning("Removing a stale postmaster.pid: process {Pid} is not PostgreSQL", left.ProcessId);
        File.Delete(PostmasterFile.PathIn(folder.Data));
    }

    private string LastLogLine() => File.Exists(folder.Log) ? File.ReadLines(folder.Log).LastOrDefault() ?? "no reason given" : "no log";
}
