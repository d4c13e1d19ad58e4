using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using Traceability.Domain.Records;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.SeedScenario;
using Traceability.Web.Features.Setup.People;
using Traceability.Web.Http;
using Traceability.Web.Tests.Contract;
using Traceability.Web.Tests.Server;

namespace Traceability.Web.Tests.Demonstration;

/// <summary>The demo takes the better part of a minute to load, so it is loaded once for all who look at it.</summary>
[CollectionDefinition(Name)]
public sealed class InTheDemo : ICollectionFixture<DemoWorkshop>
{
    public const string Name = "the demonstration workshop";
}

/// <summary>The demo scenario, loaded whole; as on a Monday, the day of the week that leaves the least room before today.</summary>
public sealed class DemoWorkshop : IAsyncLifetime
{
    private WorkshopHost host = null!;
    private HttpClient client = null!;

    /// <summary>The latest Monday.</summary>
    public DateOnly Today { get; } = DateOnly.FromDateTime(DateTime.UtcNow).AddDays(-(((int)DateTime.UtcNow.DayOfWeek + 6) % 7));

    public async Task InitializeAsync()
    {
        var server = await PostgresServer.SharedAsync();
        host = new(await server.CreateDatabaseAsync(), TimeProvider.System);
        client = host.CreateClient();
        await using (var scope = host.Services.CreateAsyncScope())
        {
            var addPerson = scope.ServiceProvider.GetRequiredService<AddPerson>();
            await scope.ServiceProvider.GetRequiredService<RecordBook>().WriteAsync(
                new(null, ""), JsonRules.Options, c => addPerson.RunAsync(new("LEAD1", "Lea Lead", "5555", [Role.Lead]), null, c), default);
        }

        await DemoScenario.LoadAsync(client, Today, null, CancellationToken.None);
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", await GenericClient.SignInAsync(client, "QUAL1", "3333"));
    }

    public async Task DisposeAsync() => await host.DisposeAsync();

    /// <summary>What judging every attempt again comes to.</summary>
    public async Task<Recomputed> RecomputedAsync()
    {
        await using var scope = host.Services.CreateAsyncScope();
        var services = scope.ServiceProvider;
        return await new Recomputation(services.GetRequiredService<WorkshopContext>(), services.GetRequiredService<DossierReader>()).RunAsync(null, default);
    }

    /// <summary>What the quality lead sees.</summary>
    public Task<JsonElement> GetAsync(string path) => client.GetFromJsonAsync<JsonElement>($"/api/v1/{path}");

    /// <summary>The serials of a list of parts, in the order of their names.</summary>
    public async Task<IReadOnlyList<string>> SerialsAsync(string query) => [.. (await GetAsync($"parts?limit=500&{query}")).Texts("items", "serial").Order(StringComparer.Ordinal)];
}
