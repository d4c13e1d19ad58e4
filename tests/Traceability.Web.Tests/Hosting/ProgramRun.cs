using System.Diagnostics;

namespace Traceability.Web.Tests.Hosting;

/// <summary>The program run to its end in a process of its own, with a data folder that does not exist yet.</summary>
internal sealed record ProgramRun(int Code, string Output, string Errors, string Data) : IDisposable
{
    public static async Task<ProgramRun> ToEndAsync(Dictionary<string, string> settings, params string[] arguments)
    {
        var data = Path.Combine(Path.GetTempPath(), $"traceability-command-{Guid.NewGuid():N}");
        var program = Environment.ProcessPath is { } path && Path.GetFileName(path) == "dotnet" ? path : "dotnet";
        var start = new ProcessStartInfo(program, [Path.Combine(AppContext.BaseDirectory, "Traceability.Web.dll"), .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        (start.Environment["TRACEABILITY_DATA"], start.Environment["TRACEABILITY_URL"]) = (data, "http://127.0.0.1:0");
        foreach (var (name, value) in settings)
        {
            start.Environment[name] = value;
        }

        using var process = Process.Start(start)!;
        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(3));
        var (output, errors) = (
            process.StandardOutput.ReadToEndAsync(patience.Token),
            process.StandardError.ReadToEndAsync(patience.Token)
        );
        try
        {
            await process.WaitForExitAsync(patience.Token);
            return new(process.ExitCode, await output, await errors, data);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"'{string.Join(' ', arguments)}' is still running: it started the service");
        }
    }

    public void Dispose()
    {
        if (Directory.Exists(Data))
        {
            Directory.Delete(Data, recursive: true);
        }
    }
}
