using System.Diagnostics;

namespace Traceability.Benchmarks;

/// <summary>What run.sh starts: the service compiled ahead of time, in artifacts/service.</summary>
internal static class PublishedProgram
{
    /// <summary>Its path; published first, with the words of run.sh, when it is not there.</summary>
    public static async Task<string> FindAsync()
    {
        var root = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(root.FullName, "Traceability.sln")))
        {
            root = root.Parent ?? throw new InvalidOperationException("the benchmark must be run from inside the repository");
        }

        var program = Path.Combine(root.FullName, "artifacts", "service", "Traceability.Web");
        if (!File.Exists(program))
        {
            Console.WriteLine("publishing the service as run.sh does");
            var info = new ProcessStartInfo(
                "dotnet",
                [
                    "publish",
                    "src/Traceability.Web",
                    "--configuration",
                    "Release",
                    "--output",
                    "artifacts/service",
                    "--nologo",
                    "--verbosity",
                    "quiet",
                    "-p:RunAnalyzers=false",
                    "--use-current-runtime",
                    "--self-contained",
                    "false",
                    "-p:PublishReadyToRun=true",
                ]
            )
            {
                WorkingDirectory = root.FullName,
            };
            using var publish = Process.Start(info)!;
            await publish.WaitForExitAsync();
            if (publish.ExitCode != 0)
            {
                throw new InvalidOperationException("the service could not be published");
            }
        }

        Console.WriteLine(
            $"{program}, built {File.GetLastWriteTime(program + ".dll"):yyyy-MM-dd HH:mm}; load of the machine"
                + $" {File.ReadAllText("/proc/loadavg").Split(' ')[0]}"
        );
        return program;
    }
}
