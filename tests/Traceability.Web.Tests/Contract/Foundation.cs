using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using Traceability.Domain.Routes.Files;
using Traceability.Domain.Stages;
using Traceability.Web.Features.Access;
using Traceability.Web.Tests.Server;

namespace Traceability.Web.Tests.Contract;

/// <summary>
/// A fresh store with the demo's routes and the least that they need, all of it made over the API: people qualified for every stage, one
/// station, and one instrument of every kind that a route names, in calibration and checked today.
/// </summary>
public sealed class Foundation : IAsyncLifetime
{
    // The author and the approver of the demo's routes have to be known before a route is loaded.
    private const string Lead = "LEAD1",
        Quality = "QUAL1",
        Importer = "IMPO9",
        Pin = "4711";

    private WorkshopHost host = null!;
    private HttpClient client = null!;

    /// <summary>A client that is signed in as quality lead and as importer.</summary>
    internal async Task<GenericClient> ClientAsync() =>
        new(client, await GenericClient.SignInAsync(client, Quality, Pin), await GenericClient.SignInAsync(client, Importer, Pin));

    public async Task InitializeAsync()
    {
        var server = await PostgresServer.SharedAsync();
        host = new(await server.CreateDatabaseAsync(), TimeProvider.System);
        client = host.CreateClient();
        await using (var scope = host.Services.CreateAsyncScope())
        {
            var key = await scope.ServiceProvider.GetRequiredService<FirstAccountKey>().MakeAsync(default);
            await PostAsync(
                "first-account",
                new
                {
                    key,
                    badge = Lead,
                    name = "Invented Lead",
                    pin = Pin,
                }
            );
        }

        var lead = await GenericClient.SignInAsync(client, Lead, Pin);
        client.DefaultRequestHeaders.Authorization = new("Bearer", lead);
        await PersonAsync(
            new
            {
                badge = Quality,
                name = "Invented Quality",
                roles = new[] { "quality" },
            },
            Quality
        );
        var files = await Task.WhenAll(
            Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "DemoRoutes"), "*.yaml").Select(f => File.ReadAllTextAsync(f))
        );
        await HaveSomethingOfEveryKindAsync(lead, [.. files.SelectMany(text => RouteText.Read(text, StageMethods.Requirements).Named)]);
        foreach (var file in files)
        {
            await RouteAsync(file, lead);
        }

        client.DefaultRequestHeaders.Authorization = new("Bearer", lead);

        var stages = (await GetAsync("routes")).List().SelectMany(r => r.List("stages")).ToList();
        var qualifications = stages.Where(s => s.Has("qualification")).Select(s => s.Text("qualification")).Distinct().ToArray();
        await PersonAsync(
            new
            {
                badge = Importer,
                name = "Invented Importer",
                roles = new[] { "importer", "builder", "quality" },
                qualifications,
            },
            Importer
        );
        await PostAsync("stations", new { code = "BENCH", title = "The only bench" });
        await PostAsync(
            "workshop",
            new
            {
                name = "The contract's workshop",
                timeZone = "UTC",
                language = "en",
                certificateSections = new
                {
                    suppliers = true,
                    lotNumbers = true,
                    reworks = true,
                },
            }
        );
        client.DefaultRequestHeaders.Authorization = null;
    }

    public async Task DisposeAsync() => await host.DisposeAsync();

    /// <summary>The lead has written it; the quality lead approves it.</summary>
    private async Task RouteAsync(string text, string lead)
    {
        client.DefaultRequestHeaders.Authorization = new("Bearer", lead);
        var loaded = await SendAsync("routes", new StringContent(text, Encoding.UTF8, "text/yaml"));
        client.DefaultRequestHeaders.Authorization = new("Bearer", await GenericClient.SignInAsync(client, Quality, Pin));
        await PostAsync(
            $"routes/{loaded.Text("model")}/{loaded.Text("kind")}/{loaded.Text("revision")}/approval",
            new { reason = "tried", pin = Pin }
        );
    }

    private async Task PersonAsync(object person, string badge)
    {
        var code = (await PostAsync("people", person)).Text("code");
        await PostAsync(
            "pins",
            new
            {
                badge,
                code,
                newPin = Pin,
            }
        );
    }

    /// <summary>
    /// A route comes into force when the workshop has something of every kind that it names: an instrument, and a lot, though in
    /// quarantine.
    /// </summary>
    private async Task HaveSomethingOfEveryKindAsync(string lead, IReadOnlyList<NamedKind> named)
    {
        foreach (
            var (kind, number) in named
                .Where(k => k.Sort == KindSort.Instrument)
                .Select(k => k.Code)
                .Distinct()
                .Order(StringComparer.Ordinal)
                .Select((k, i) => (k, i + 1))
        )
        {
            await InstrumentAsync(lead, $"INS-{number}", kind);
        }

        client.DefaultRequestHeaders.Authorization = new("Bearer", await GenericClient.SignInAsync(client, Quality, Pin));
        foreach (var kind in named.Where(k => k.Sort == KindSort.Lot && k.Code != "film").Select(k => k.Code).Distinct())
        {
            await PostAsync(
                "lots",
                new
                {
                    kind,
                    supplier = "Invented supplier",
                    supplierLot = "FIRST",
                    quantity = 1,
                    unit = "pcs",
                }
            );
        }

        client.DefaultRequestHeaders.Authorization = new("Bearer", lead);
    }

    private async Task InstrumentAsync(string lead, string code, string kind)
    {
        client.DefaultRequestHeaders.Authorization = new("Bearer", lead);
        var today = DateOnly.FromDateTime(DateTime.UtcNow);
        await PostAsync(
            "instruments",
            new
            {
                code,
                kind,
                title = $"Invented {kind}",
                checkNominal = 10,
                checkTolerance = 0.5,
                checkUnit = "Hz",
            }
        );
        await PostAsync(
            $"instruments/{code}/calibrations",
            new
            {
                calibratedOn = today.AddDays(-60),
                dueOn = today.AddDays(300),
                reference = $"CAL-{code}",
            }
        );
        await PostAsync($"instruments/{code}/checks", new { value = 10 });
        client.DefaultRequestHeaders.Authorization = null;
    }

    private Task<JsonElement> PostAsync(string path, object body) =>
        SendAsync(
            path,
            new StringContent(JsonSerializer.SerializeToNode(body)!.ToJsonString(), new MediaTypeHeaderValue("application/json"))
        );

    private async Task<JsonElement> SendAsync(string path, HttpContent content)
    {
        using var answer = await client.PostAsync(new Uri($"/api/v1/{path}", UriKind.Relative), content);
        var text = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.IsSuccessStatusCode, $"{path}: {text}");
        return JsonSerializer.Deserialize<JsonElement>(text);
    }

    private async Task<JsonElement> GetAsync(string path) =>
        JsonSerializer.Deserialize<JsonElement>(await client.GetStringAsync(new Uri($"/api/v1/{path}", UriKind.Relative)));
}
