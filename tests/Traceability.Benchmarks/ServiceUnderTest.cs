using System.Diagnostics;
using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Text.Json;

namespace Traceability.Benchmarks;

/// <summary>The built service as its own process on a private cluster in a folder of its own, with durable settings.</summary>
internal sealed class ServiceUnderTest : IAsyncDisposable
{
    private readonly Process process;

    private ServiceUnderTest(Process process, string folder, HttpClient http, TimeSpan start) =>
        (this.process, Folder, Http, Start) = (process, folder, http, start);

    public string Folder { get; }

    public HttpClient Http { get; }

    /// <summary>From starting the process to the first "ready".</summary>
    public TimeSpan Start { get; }

    public long ResidentMegabytes =>
        long.Parse(
            File.ReadLines($"/proc/{process.Id}/status")
                .First(l => l.StartsWith("VmRSS", StringComparison.Ordinal))
                .Split(' ', StringSplitOptions.RemoveEmptyEntries)[1],
            System.Globalization.CultureInfo.InvariantCulture
        ) / 1024;

    public static async Task<ServiceUnderTest> StartAsync(string folder, bool demo, string? program = null)
    {
        var address = $"http://127.0.0.1:{FreePort()}";
        var info = new ProcessStartInfo(program ?? Path.Combine(AppContext.BaseDirectory, "Traceability.Web"))
        {
            RedirectStandardOutput = true,
        };
        info.ArgumentList.Add("serve");
        if (demo)
        {
            info.ArgumentList.Add("--demo");
        }

        info.Environment["TRACEABILITY_DATA"] = folder;
        info.Environment["TRACEABILITY_URL"] = address;
        var watch = Stopwatch.StartNew();
        var process = Process.Start(info)!;
        _ = process.StandardOutput.ReadToEndAsync();
        var http = new HttpClient { BaseAddress = new(address), Timeout = TimeSpan.FromMinutes(2) };
        while (!await IsReadyAsync(http))
        {
            await Task.Delay(20);
        }

        return new(process, folder, http, watch.Elapsed);
    }

    /// <summary>Runs one of the service's commands on the database in the folder; its exit code.</summary>
    public static async Task<int> CommandAsync(string folder, params string[] arguments)
    {
        var info = new ProcessStartInfo(Path.Combine(AppContext.BaseDirectory, "Traceability.Web"), arguments);
        info.Environment["TRACEABILITY_DATA"] = folder;
        using var process = Process.Start(info)!;
        await process.WaitForExitAsync();
        return process.ExitCode;
    }

    public async Task SignInAsync(string badge, string pin)
    {
        using var answer = await Http.PostAsJsonAsync("/api/v1/sessions", new { badge, pin });
        var token = (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("token").GetString();
        Http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);
    }

    public async ValueTask DisposeAsync()
    {
        Http.Dispose();
        using var interrupt = Process.Start("kill", ["-TERM", process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
        await process.WaitForExitAsync();
        process.Dispose();
    }

    private static async Task<bool> IsReadyAsync(HttpClient http)
    {
        try
        {
            return (await http.GetAsync("/health/ready")).StatusCode == HttpStatusCode.OK;
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
