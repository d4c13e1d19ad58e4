using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.SeedScenario;
using Traceability.Web.Features.Access;
using Traceability.Web.Features.Setup.People;
using Traceability.Web.Features.Shared;
using Traceability.Web.Tests.Server;

namespace Traceability.Web.Tests.Demonstration;

/// <summary>The demo scenario, loaded whole; as on a Monday, the day of the week that leaves the least room before today.</summary>
public sealed class DemoWorkshop : IAsyncLifetime
{
    private WorkshopHost host = null!;
    private HttpClient client = null!;

    /// <summary>True for a real server on a free port, as a browser needs it.</summary>
    public bool OverTheWire { get; init; }

    /// <summary>Where the service listens, when it is over the wire.</summary>
    public Uri Address => host.ClientOptions.BaseAddress;

    /// <summary>The latest Monday.</summary>
    public DateOnly Today { get; } = DateOnly.FromDateTime(DateTime.UtcNow).AddDays(-(((int)DateTime.UtcNow.DayOfWeek + 6) % 7));

    public async Task InitializeAsync()
    {
        var server = await PostgresServer.SharedAsync();
        host = new(await server.CreateDatabaseAsync(), TimeProvider.System, OverTheWire ? "http://127.0.0.1:0" : null);
        if (OverTheWire)
        {
            host.UseKestrel(0);
        }

        client = host.CreateClient();
        await using (var scope = host.Services.CreateAsyncScope())
        {
            var db = scope.ServiceProvider.GetRequiredService<WorkshopContext>();
            db.Add(new WorkshopSetting { Name = WorkshopSettings.Demonstration, Value = "yes" });
            await db.SaveChangesAsync();
            var key = await scope.ServiceProvider.GetRequiredService<FirstAccountKey>().MakeAsync(default);
            var first = scope.ServiceProvider.GetRequiredService<MakeFirstAccount>();
            Assert.Null((await first.RunAsync(new(key, "LEAD1", "Lea Lead", "5555"), default)).Refusal);
        }

        await DemoScenario.LoadAsync(client, Today, null, CancellationToken.None);
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", await SignInAsync("QUAL1", "3333"));
    }

    public async Task DisposeAsync() => await host.DisposeAsync();

    /// <summary>What judging every attempt again comes to.</summary>
    public async Task<Recomputed> RecomputedAsync()
    {
        await using var scope = host.Services.CreateAsyncScope();
        var services = scope.ServiceProvider;
        return await new Recomputation(
            services.GetRequiredService<WorkshopContext>(),
            services.GetRequiredService<DossierReader>()
        ).RunAsync(null, default);
    }

    /// <summary>What <c>verify</c> finds.</summary>
    public async Task<IReadOnlyList<AuditFinding>> DisagreementsAsync()
    {
        await using var scope = host.Services.CreateAsyncScope();
        return (await new LedgerAudit(scope.ServiceProvider.GetRequiredService<WorkshopContext>()).CheckAllAsync(null, default)).Findings;
    }

    /// <summary>What the quality lead sees.</summary>
    public Task<JsonElement> GetAsync(string path) => client.GetFromJsonAsync<JsonElement>($"/api/v1/{path}");

    /// <summary>The serials of a list of parts, in the order of their names.</summary>
    public async Task<IReadOnlyList<string>> SerialsAsync(string query) =>
        [.. (await GetAsync($"parts?limit=500&{query}")).Texts("items", "serial").Order(StringComparer.Ordinal)];

    private async Task<string> SignInAsync(string badge, string pin)
    {
        using var answer = await client.PostAsJsonAsync("/api/v1/sessions", new { badge, pin });
        return (await answer.Content.ReadFromJsonAsync<JsonElement>()).Text("token");
    }
}

/// <summary>One demo for all tests that only read it: loading it takes most of a minute.</summary>
[CollectionDefinition(Name)]
public sealed class InDemoWorkshop : ICollectionFixture<DemoWorkshop>
{
    public const string Name = "in the demo workshop";
}
