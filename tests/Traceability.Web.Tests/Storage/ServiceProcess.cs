using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace Traceability.Web.Tests.Storage;

/// <summary>The built service as a process of its own, on a free port of this machine.</summary>
internal sealed class ServiceProcess : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private readonly Process process;

    private ServiceProcess(Process process, Uri address)
    {
        this.process = process;
        Client = new(new SocketsHttpHandler { Expect100ContinueTimeout = Patience }) { BaseAddress = address, Timeout = Patience };
    }

    public HttpClient Client { get; }

    public int Id => process.Id;

    /// <summary>Starts it with these settings in its environment and waits until it is ready.</summary>
    public static async Task<ServiceProcess> StartAsync(IReadOnlyDictionary<string, string> settings)
    {
        var address = new Uri($"http://127.0.0.1:{FreePort()}");
        var start = new ProcessStartInfo(
            Environment.ProcessPath is { } path && Path.GetFileName(path) == "dotnet" ? path : "dotnet",
            [Path.Combine(AppContext.BaseDirectory, "Traceability.Web.dll")]
        )
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (name, value) in settings.Append(new("TRACEABILITY_URL", address.ToString())))
        {
            start.Environment[name] = value;
        }

        var service = new ServiceProcess(Process.Start(start)!, address);
        service.process.OutputDataReceived += (_, _) => { };
        service.process.ErrorDataReceived += (_, _) => { };
        service.process.BeginOutputReadLine();
        service.process.BeginErrorReadLine();
        await service.ReadyAsync();
        return service;
    }

    /// <summary>kill -9: the process has no chance to finish anything.</summary>
    public void Kill()
    {
        process.Kill();
        process.WaitForExit();
    }

    /// <summary>What Ctrl-C and a service supervisor do: asks it to end, and gives its exit code.</summary>
    public async Task<int> StopAsync()
    {
        using (var kill = Process.Start("kill", ["-TERM", $"{process.Id}"]))
        {
            await kill.WaitForExitAsync();
        }

        await process.WaitForExitAsync();
        return process.ExitCode;
    }

    public void Dispose()
    {
        if (!process.HasExited)
        {
            Kill();
        }

        Client.Dispose();
        process.Dispose();
    }

    private async Task ReadyAsync()
    {
        var waited = Stopwatch.StartNew();
        while (true)
        {
            try
            {
                using var answer = await Client.GetAsync(new Uri("/health/ready", UriKind.Relative));
                if (answer.IsSuccessStatusCode)
                {
                    return;
                }

                Assert.True(waited.Elapsed < Patience, $"not ready after {Patience}: {await answer.Content.ReadAsStringAsync()}");
            }
            catch (HttpRequestException) when (!process.HasExited && waited.Elapsed < Patience)
            {
                // Not listening yet.
            }

            await Task.Delay(20);
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
