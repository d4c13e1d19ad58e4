using System.Diagnostics;
using Microsoft.Extensions.Logging.Abstractions;
using Traceability.Persistence.Embedded;

namespace Traceability.Web.Tests.Embedded;

/// <summary>A data folder for one test, and what can happen to it between two starts.</summary>
internal sealed class DataFolder : IDisposable
{
    public DataFolder()
    {
        var made = Directory.CreateTempSubdirectory("traceability-test-");
        if (Environment.IsPrivilegedProcess && !OperatingSystem.IsWindows())
            made.UnixFileMode |= UnixFileMode.OtherExecute;
        Path = made.FullName;
    }

    public string Path { get; }

    public EmbeddedPostgresOptions Options =>
        new(Path) { Durable = false, ProgramsFolder = Environment.GetEnvironmentVariable("TRACEABILITY_POSTGRES_PROGRAMS") };

    public string InCluster(string file) => System.IO.Path.Combine(Path, "pg", file);

    public Task<EmbeddedPostgres> StartAsync() => EmbeddedPostgres.StartAsync(Options, NullLogger.Instance);

    /// <summary>A server of this folder whose owner is gone: the same command line, but nobody's child.</summary>
    public async Task<int> LeaveOrphanAsync()
    {
        string[] command;
        await using (var owner = await StartAsync())
            command = (await File.ReadAllTextAsync($"/proc/{owner.ProcessId}/cmdline")).Split('\0', StringSplitOptions.RemoveEmptyEntries);
        using var orphan = await StartAsServerUserAsync(command);
        while (!File.Exists(InCluster("postmaster.pid")) || !(await File.ReadAllTextAsync(InCluster("postmaster.pid"))).Contains("ready"))
        {
            Assert.False(orphan.HasExited);
            await Task.Delay(20);
        }

        return orphan.Id;
    }

    /// <summary>Started as the account that owns the cluster.</summary>
    public async Task<Process> StartAsServerUserAsync(params string[] command)
    {
        using var stat = Process.Start(new ProcessStartInfo("stat", ["-c", "%u %g", InCluster("")]) { RedirectStandardOutput = true })!;
        var owner = (await stat.StandardOutput.ReadToEndAsync()).Split();
        string[] words = Environment.IsPrivilegedProcess
            ? ["setpriv", $"--reuid={owner[0]}", $"--regid={owner[1]}", "--clear-groups", .. command]
            : command;
        return Process.Start(new ProcessStartInfo("sh", ["-c", "exec \"$@\" >/dev/null 2>&1", "sh", .. words]) { WorkingDirectory = "/" })!;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
