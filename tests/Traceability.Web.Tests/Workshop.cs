using System.Collections.Concurrent;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using Traceability.Web.Features.Access;
using Traceability.Web.Tests.Server;

namespace Traceability.Web.Tests;

/// <summary>
/// A small invented workshop behind its HTTP interface, on a database of its own: two builders, a quality lead, a service desk, a
/// workshop lead, an importer and a measuring instrument; a model TEST-1 of three short routes; released lots.
/// </summary>
public sealed class Workshop : IAsyncLifetime
{
    public const string Model = "TEST-1";
    public const string Builder = "B1",
        OtherBuilder = "B2",
        Quality = "Q1",
        ServiceDesk = "S1",
        Lead = "L1",
        Importer = "I1",
        Machine = "M1";
    public const string Film = "FILM-1",
        Ring = "RING-1",
        Body = "BODY-1";
    public const string FlatResponse = "frequency_hz,level_db\n100,0\n1000,0\n10000,0.5\n";

    private readonly ConcurrentDictionary<(string Badge, long Quarter), Task<string>> tokens = new();
    private WorkshopHost host = null!;
    private HttpClient client = null!;

    /// <summary>True for a real server on a free port, as a browser needs it.</summary>
    public bool OverTheWire { get; init; }

    /// <summary>Where the service listens, when it is over the wire.</summary>
    public Uri Address => host.ClientOptions.BaseAddress;

    /// <summary>Settings of the service beside the usual ones.</summary>
    public Dictionary<string, string> Settings { get; init; } = [];

    /// <summary>True for the hour that it is, as a service in a process of its own has it too; else it is six in the morning.</summary>
    public bool AtThisHour
    {
        get;
        init
        {
            field = value;
            Clock = new(value ? TimeSpan.Zero : SteeredClock.ToMorning);
        }
    }

    public SteeredClock Clock { get; private init; } = new(SteeredClock.ToMorning);

    public IServiceProvider Services => host.Services;

    public static string PinOf(string badge) => $"{badge[0] - 'A':00}{badge[1]}0";

    public async Task InitializeAsync()
    {
        var server = await PostgresServer.SharedAsync();
        Open(await server.CreateDatabaseAsync(AtThisHour ? "workshop-now" : "workshop", SetUpAsync));
    }

    public async Task DisposeAsync() => await host.DisposeAsync();

    /// <summary>A client that is signed in with that badge, or not at all.</summary>
    public async Task<HttpClient> ClientAsync(string? badge)
    {
        var fresh = host.CreateClient();
        if (badge is not null)
        {
            fresh.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", await TokenAsync(badge));
        }

        return fresh;
    }

    /// <summary>A client at a browser's place that keeps cookies but follows no redirect.</summary>
    public HttpClient ClientWithoutRedirects() => host.CreateClient(new() { AllowAutoRedirect = false });

    public Task<Reply> GetAsync(string path, string? badge = Quality) => SendAsync(new(HttpMethod.Get, PathOf(path)), badge);

    public Task<Reply> PostAsync(string path, object? body, string? badge = Builder, string? key = null)
    {
        var request = new HttpRequestMessage(HttpMethod.Post, PathOf(path))
        {
            Content = body as HttpContent ?? (body is null ? null : JsonContent.Create(body)),
        };
        if (key is not null)
        {
            request.Headers.Add("Idempotency-Key", key);
        }

        return SendAsync(request, badge);
    }

    public async Task<Reply> SendAsync(HttpRequestMessage request, string? badge)
    {
        if (badge is not null)
        {
            request.Headers.Authorization = new("Bearer", await TokenAsync(badge));
        }

        using var answer = await client.SendAsync(request);
        var body = await answer.Content.ReadAsStringAsync();
        var isJson = answer.Content.Headers.ContentType?.MediaType?.EndsWith("json", StringComparison.Ordinal) == true;
        return new(answer.StatusCode, isJson ? JsonSerializer.Deserialize<JsonElement>(body) : default, body);
    }

    public static StringContent Csv(string text) => new(text, Encoding.UTF8, "text/csv");

    private static string PathOf(string path) => path.StartsWith('/') ? path : $"/api/v1/{path}";

    /// <summary>Cures pass, and with them the sessions end; a new one is taken every six hours of the steered clock.</summary>
    private Task<string> TokenAsync(string badge) =>
        tokens.GetOrAdd(
            (badge, Clock.GetUtcNow().Ticks / TimeSpan.FromHours(6).Ticks),
            async key =>
            {
                using var answer = await client.PostAsJsonAsync("/api/v1/sessions", new { badge = key.Badge, pin = PinOf(key.Badge) });
                return JsonSerializer.Deserialize<JsonElement>(await answer.Content.ReadAsStringAsync()).Text("token");
            }
        );

    private void Open(string connectionString)
    {
        host = new(connectionString, Clock, OverTheWire ? "http://127.0.0.1:0" : null, Settings);
        if (OverTheWire)
        {
            host.UseKestrel(0);
        }

        client = host.CreateClient();
    }

    /// <summary>Fills the template: done once for all tests of a run, through the set-up interface.</summary>
    private async Task SetUpAsync(string connectionString)
    {
        var workshop = new Workshop { AtThisHour = AtThisHour };
        workshop.Open(connectionString);
        await using (var scope = workshop.Services.CreateAsyncScope())
        {
            var key = await scope.ServiceProvider.GetRequiredService<FirstAccountKey>().MakeAsync(default);
            (
                await workshop.PostAsync(
                    "first-account",
                    new
                    {
                        key,
                        badge = Lead,
                        name = "Lea Lead",
                        pin = PinOf(Lead),
                    },
                    null
                )
            ).Expect(201);
        }

        await WorkshopSetUp.RunAsync(workshop);
        await workshop.DisposeAsync();
    }
}
