using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;

namespace Traceability.Web.Tests;

/// <summary>The whole service in this process, on a database of its own.</summary>
internal sealed class WorkshopHost(
    string connectionString,
    TimeProvider clock,
    string? url = null,
    Dictionary<string, string>? settings = null
) : WebApplicationFactory<Program>
{
    private readonly DirectoryInfo data = Directory.CreateTempSubdirectory("traceability-web-test-");

    protected override void ConfigureWebHost(IWebHostBuilder builder) =>
        (settings ?? [])
            .Aggregate(
                builder
                    .UseSetting("ConnectionStrings:Traceability", connectionString)
                    .UseSetting("TRACEABILITY_DATA", data.FullName)
                    .UseSetting("TRACEABILITY_URL", url)
                    .UseSetting("TRACEABILITY_PUBLIC_URL", "https://workshop.example"),
                (b, s) => b.UseSetting(s.Key, s.Value)
            )
            .ConfigureTestServices(services => services.AddSingleton(clock));

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        data.Delete(recursive: true);
    }
}
