using System.Diagnostics;
using Microsoft.Extensions.Logging.Abstractions;
using Traceability.Persistence.Embedded;

namespace Traceability.Web.Tests.Server;

/// <summary>The product's own private cluster in a temporary folder that goes with the test process.</summary>
internal static class PrivatePostgres
{
    public static async Task<string> StartAsync()
    {
        var folder = Directory.CreateTempSubdirectory("traceability-test-");
        // Made for this account only; under root the server is another one and has to pass through.
        if (Environment.IsPrivilegedProcess && !OperatingSystem.IsWindows())
            folder.UnixFileMode |= UnixFileMode.OtherExecute;
        var options = new EmbeddedPostgresOptions(folder.FullName)
        {
            Durable = false,
            ProgramsFolder = Environment.GetEnvironmentVariable("TRACEABILITY_POSTGRES_PROGRAMS"),
        };
        var server = await EmbeddedPostgres.StartAsync(options, NullLogger.Instance);
        await RemoveAfterUsAsync(folder.FullName);
        return server.ConnectionString;
    }

    /// <summary>
    /// The runner gives a test process a tenth of a second to end, too little to clean up, and a killed one has none. The server ends
    /// by itself with its parent; a shell waits for both and takes the folder away.
    /// </summary>
    private static async Task RemoveAfterUsAsync(string folder)
    {
        const string script = "while [ -d /proc/$1 ] || [ -f \"$2/pg/postmaster.pid\" ]; do sleep 1; done; rm -rf \"$2\"";
        string[] command =
        [
            "setsid",
            "--fork",
            "sh",
            "-c",
            $"({script}) >/dev/null 2>&1 </dev/null",
            "sh",
            $"{Environment.ProcessId}",
            folder,
        ];
        using var janitor = Process.Start(command[0], command[1..]);
        await janitor.WaitForExitAsync();
    }
}
