using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace Traceability.Web.Hosting;

/// <summary>Where the service reaches itself.</summary>
public static class LocalAddresses
{
    private const string Loopback = "://127.0.0.1";

    /// <summary>Where this service answers on its own machine; null under a test server, which has no address.</summary>
    public static Uri? LocalAddress(this IServer server) =>
        server.Features.Get<IServerAddressesFeature>()?.Addresses.FirstOrDefault() is { } address
            ? new(
                address
                    .Replace("://0.0.0.0", Loopback, StringComparison.Ordinal)
                    .Replace("://[::]", Loopback, StringComparison.Ordinal)
                    .Replace("://*", Loopback, StringComparison.Ordinal)
            )
            : null;
}
