using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using Traceability.SeedScenario;
using Traceability.Web.Features.Setup.FirstAccount;
using Traceability.Web.Tests.Contract;
using Traceability.Web.Tests.Server;

namespace Traceability.Web.Tests.Demonstration;

/// <summary>The demo scenario, loaded whole; as on a Sunday, the day of the week that leaves the least room before today.</summary>
public sealed class DemoWorkshop : IAsyncLifetime
{
    private WorkshopHost host = null!;
    private HttpClient client = null!;

    /// <summary>The latest Sunday.</summary>
    public DateOnly Today { get; } = DateOnly.FromDateTime(DateTime.UtcNow).AddDays(-(int)DateTime.UtcNow.DayOfWeek);

    public async Task InitializeAsync()
    {
        var server = await PostgresServer.SharedAsync();
        host = new(await server.CreateDatabaseAsync(), TimeProvider.System);
        client = host.CreateClient();
        await using (var scope = host.Services.CreateAsyncScope())
        {
            var key = await scope.ServiceProvider.GetRequiredService<FirstAccount>().MakeKeyAsync(default);
            using var made = await client.PostAsJsonAsync("/api/v1/first-account", new { key, badge = "LEAD1", name = "Lea Lead", pin = "5555" });
            made.EnsureSuccessStatusCode();
        }

        await DemoScenario.LoadAsync(client, Today, null, CancellationToken.None);
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", await GenericClient.SignInAsync(client, "QUAL1", "3333"));
    }

    public async Task DisposeAsync() => await host.DisposeAsync();

    /// <summary>What the quality lead sees.</summary>
    public Task<JsonElement> GetAsync(string path) => client.GetFromJsonAsync<JsonElement>($"/api/v1/{path}");

    /// <summary>The serials of a list of parts, in the order of their names.</summary>
    public async Task<IReadOnlyList<string>> SerialsAsync(string query) => [.. (await GetAsync($"parts?limit=500&{query}")).Texts("items", "serial").Order(StringComparer.Ordinal)];
}
