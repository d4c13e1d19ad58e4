using System.Diagnostics;

namespace Traceability.Persistence.Embedded;

/// <summary>Runs one short program to its end.</summary>
internal static class Command
{
    internal readonly record struct Result(int ExitCode, string Output)
    {
        public bool Ok => ExitCode == 0;

        /// <summary>The line that most likely says why: programs put their reason last.</summary>
        public string LastLine =>
            Output.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).LastOrDefault() ?? "";
    }

    internal static async Task<Result> RunAsync(IEnumerable<string> command, CancellationToken cancellation, string? libraries = null)
    {
        using var process = Process.Start(StartInfo(command, libraries))!;
        try
        {
            var errors = process.StandardError.ReadToEndAsync(cancellation);
            var output = await process.StandardOutput.ReadToEndAsync(cancellation) + await errors;
            await process.WaitForExitAsync(cancellation);
            return new Result(process.ExitCode, output);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            throw;
        }
    }

    /// <summary>
    /// A bare environment: the service's own may hold secrets, and PGPORT, PGDATA and their kind would change what PostgreSQL does.
    /// </summary>
    internal static ProcessStartInfo StartInfo(IEnumerable<string> command, string? libraries)
    {
        var words = command.ToList();
        var start = new ProcessStartInfo(words[0], words.Skip(1))
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = "/",
        };
        start.Environment.Clear();
        start.Environment["PATH"] = "/usr/local/sbin:/usr/local/bin:/usr/sbin:/usr/bin:/sbin:/bin";
        start.Environment["LC_ALL"] = "C.UTF-8";
        if (libraries is not null)
            start.Environment["LD_LIBRARY_PATH"] = libraries;
        return start;
    }
}
