using System.Net.Sockets;

namespace Traceability.Web.Tests.Server;

/// <summary>Asks the engine at DOCKER_HOST, or at the usual socket, whether it is there.</summary>
internal static class ContainerEngine
{
    private const string UsualSocket = "unix:///var/run/docker.sock";
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    public static async Task<bool> AnswersAsync()
    {
        var address = new Uri(Environment.GetEnvironmentVariable("DOCKER_HOST") is { Length: > 0 } host ? host : UsualSocket);
        if (address.Scheme == "unix" && !File.Exists(address.LocalPath))
            return false;
        using var handler = new SocketsHttpHandler();
        if (address.Scheme == "unix")
            handler.ConnectCallback = (_, cancellation) => ConnectAsync(address.LocalPath, cancellation);
        using var client = new HttpClient(handler) { Timeout = Patience };
        try
        {
            var ping = new Uri(address.Scheme == "unix" ? "http://engine/_ping" : $"http://{address.Authority}/_ping");
            using var answer = await client.GetAsync(ping);
            return answer.IsSuccessStatusCode;
        }
        catch (Exception e) when (e is HttpRequestException or TaskCanceledException)
        {
            return false;
        }
    }

    private static async ValueTask<Stream> ConnectAsync(string socketPath, CancellationToken cancellation)
    {
        var socket = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
        try
        {
            await socket.ConnectAsync(new UnixDomainSocketEndPoint(socketPath), cancellation);
            return new NetworkStream(socket, ownsSocket: true);
        }
        catch
        {
            socket.Dispose();
            throw;
        }
    }
}
