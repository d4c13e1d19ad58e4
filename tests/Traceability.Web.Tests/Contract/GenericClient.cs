using System.Globalization;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;

namespace Traceability.Web.Tests.Contract;

/// <summary>
/// A client that knows the HTTP contract and nothing of the workshop: it reads the routes and does what they say, with nominal values,
/// soak logs made from the phases and responses made from the mask, stepping its own clock over the waits.
/// </summary>
internal sealed class GenericClient(HttpClient http, string quality, string importer)
{
    private static readonly string[] Done = ["pass"];

    /// <summary>The client's clock: some days ago, so that every wait can be stepped over without reaching the future.</summary>
    public DateTimeOffset Clock { get; set; } = DateTimeOffset.UtcNow.AddDays(-9);

    /// <summary>Signs in and gives the token.</summary>
    public static async Task<string> SignInAsync(HttpClient http, string badge, string pin)
    {
        using var answer = await http.PostAsJsonAsync("/api/v1/sessions", new { badge, pin });
        var body = await answer.Content.ReadFromJsonAsync<JsonElement>();
        return body.GetProperty("token").GetString()!;
    }

    /// <summary>The route of a model and kind.</summary>
    public Task<JsonElement> RouteAsync(string model, string kind) => GetAsync($"/api/v1/routes/{model}/{kind}");

    /// <summary>Makes a finished part of a kind, with everything that it needs made first; gives its serial.</summary>
    public async Task<string> MakeAsync(string model, string kind, Func<string, JsonElement, Task>? beforeEachStage = null)
    {
        var route = await RouteAsync(model, kind);
        var children = new Dictionary<string, string>();
        foreach (var slot in Stages(route).SelectMany(s => s.GetProperty("slots").EnumerateArray()))
        {
            if (slot.GetProperty("accepts").TryGetProperty("partKind", out var childKind) && childKind.ValueKind == JsonValueKind.String)
            {
                children[slot.GetProperty("position").GetString()!] = await MakeAsync(model, childKind.GetString()!);
            }
        }

        var serial = (await PostAsync(importer, "/api/v1/parts", new { kind, model, occurredAt = Clock })).GetProperty("serial").GetString()!;
        foreach (var stage in Stages(route))
        {
            if (beforeEachStage is not null)
            {
                await beforeEachStage(serial, stage);
            }

            await DoAsync(serial, stage, children);
        }

        return serial;
    }

    /// <summary>Does one stage on a part by attempt, readings, fittings, evidence and close.</summary>
    public async Task DoAsync(string serial, JsonElement stage, IReadOnlyDictionary<string, string> children)
    {
        var code = stage.GetProperty("code").GetString()!;
        Clock = Clock.AddMinutes(Largest(stage, "waits", "minimumMinutes") + 5);
        var attempt = await PostAsync(importer, $"/api/v1/parts/{serial}/attempts", new
        {
            stage = code,
            station = (await GetAsync("/api/v1/stations")).GetProperty("items")[0].GetProperty("code").GetString(),
            instruments = await InstrumentsAsync(stage),
            occurredAt = Clock,
        });
        var id = attempt.GetProperty("id").GetString();
        foreach (var slot in stage.GetProperty("slots").EnumerateArray())
        {
            await PostAsync(importer, $"/api/v1/attempts/{id}/fittings", await FittingAsync(slot, children));
        }

        foreach (var c in stage.GetProperty("characteristics").EnumerateArray().Where(c => c.GetProperty("entered").GetBoolean()))
        {
            await PostAsync(importer, $"/api/v1/attempts/{id}/readings", new { characteristic = c.GetProperty("name").GetString(), value = ValueFor(c), occurredAt = Clock });
        }

        var started = Clock;
        Clock = Clock.AddMinutes(Math.Max(MinutesOf(stage, "minimumOpenMinutes"), DwellOf(stage)) + 1);
        foreach (var evidence in stage.GetProperty("evidence").EnumerateArray())
        {
            await EvidenceAsync(id!, stage, evidence, started);
        }

        var closed = await PostAsync(importer, $"/api/v1/attempts/{id}/close", new { occurredAt = Clock });
        Assert.True(Done.Contains(closed.GetProperty("verdict").GetString()), $"{code} of {serial}: {closed}");
    }

    /// <summary>GET with the importer's token.</summary>
    public async Task<JsonElement> GetAsync(string path)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        return await SendAsync(importer, request);
    }

    /// <summary>POST; anything but success fails the test with the answer's own words.</summary>
    public async Task<JsonElement> PostAsync(string token, string path, object body)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = JsonContent.Create(body) };
        return await SendAsync(token, request);
    }

    /// <summary>POST as the quality lead.</summary>
    public Task<JsonElement> DecideAsync(string path, object body) => PostAsync(quality, path, body);

    private static IEnumerable<JsonElement> Stages(JsonElement route) => route.GetProperty("stages").EnumerateArray();

    private async Task<object> FittingAsync(JsonElement slot, IReadOnlyDictionary<string, string> children)
    {
        var position = slot.GetProperty("position").GetString()!;
        if (children.TryGetValue(position, out var child))
        {
            return new { position, child, occurredAt = Clock };
        }

        var kind = slot.GetProperty("accepts").GetProperty("lotKind").GetString()!;
        var lots = (await GetAsync($"/api/v1/lots?kind={kind}&state=released")).GetProperty("items").EnumerateArray()
            .Where(l => !l.TryGetProperty("expiresAt", out var e) || e.ValueKind == JsonValueKind.Null || e.GetDateTimeOffset() > DateTimeOffset.UtcNow)
            .Where(l => l.GetProperty("holds").GetArrayLength() == 0 && (!l.TryGetProperty("mixedAt", out var m) || m.ValueKind == JsonValueKind.Null));
        var lot = lots.Select(l => l.GetProperty("number").GetString()).FirstOrDefault() ?? await ReceiveAsync(kind);
        return new { position, lot, occurredAt = Clock };
    }

    private async Task<string> ReceiveAsync(string kind)
    {
        var film = kind == "film" ? new { baseThicknessUm = 6.0, metalThicknessNm = 50.0 } : null;
        var lot = await DecideAsync("/api/v1/lots", new { kind, supplier = "Invented supplier", supplierLot = "G-1", quantity = 1000, unit = "pcs", receivedAt = DateTimeOffset.UtcNow, film });
        var number = lot.GetProperty("number").GetString()!;
        await DecideAsync($"/api/v1/lots/{number}/release", new { reason = "generic client" });
        return number;
    }

    private async Task<List<string>> InstrumentsAsync(JsonElement stage)
    {
        var all = (await GetAsync("/api/v1/instruments")).GetProperty("items").EnumerateArray().ToList();
        return [.. stage.GetProperty("instrumentKinds").EnumerateArray().Select(k => k.GetString()!).Select(kind =>
            all.First(i => i.GetProperty("kind").GetString() == kind && i.GetProperty("state").GetString() == "usable").GetProperty("code").GetString()!)];
    }

    private static decimal ValueFor(JsonElement c)
    {
        decimal? Of(string name) => c.TryGetProperty(name, out var v) && v.ValueKind == JsonValueKind.Number ? v.GetDecimal() : null;
        return Of("nominal") ?? (Of("lower"), Of("upper")) switch
        {
            ({ } lower, { } upper) => (lower + upper) / 2,
            ({ } lower, null) => lower * 2,
            (null, { } upper) => upper / 2,
            _ => 1,
        };
    }

    private async Task EvidenceAsync(string attempt, JsonElement stage, JsonElement evidence, DateTimeOffset started)
    {
        var (name, kind) = (evidence.GetProperty("name").GetString()!, evidence.GetProperty("kind").GetString()!);
        var parameters = stage.GetProperty("parameters");
        var text = kind switch
        {
            "climate-log" => SoakLog(parameters.GetProperty("phases"), started),
            "frequency-response" => Response(parameters.GetProperty("mask")),
            _ => null,
        };
        if (text is null)
        {
            Assert.False(evidence.GetProperty("required").GetBoolean(), $"this client cannot make {kind}");
            return;
        }

        using var request = new HttpRequestMessage(HttpMethod.Post, $"/api/v1/attempts/{attempt}/evidence?name={name}") { Content = new StringContent(text, Encoding.UTF8, "text/csv") };
        await SendAsync(importer, request);
    }

    private static string SoakLog(JsonElement phases, DateTimeOffset started)
    {
        var csv = new StringBuilder("time,temperature_c,humidity_pct\n");
        var at = started;
        foreach (var phase in phases.EnumerateArray())
        {
            var humidity = phase.TryGetProperty("humidityPct", out var h) && h.ValueKind == JsonValueKind.Number ? h.GetDecimal() : 45;
            for (var minute = 0; minute <= phase.GetProperty("minDwellMinutes").GetInt32(); minute++, at = at.AddMinutes(1))
            {
                csv.Append(CultureInfo.InvariantCulture, $"{at.UtcDateTime:yyyy-MM-ddTHH:mm:ssZ},{phase.GetProperty("temperatureC").GetDecimal()},{humidity}\n");
            }
        }

        return csv.ToString();
    }

    private static string Response(JsonElement mask)
    {
        var csv = new StringBuilder("frequency_hz,level_db\n");
        foreach (var corner in mask.EnumerateArray())
        {
            csv.Append(CultureInfo.InvariantCulture, $"{corner.GetProperty("frequencyHz").GetDecimal()},{(corner.GetProperty("lowerDb").GetDecimal() + corner.GetProperty("upperDb").GetDecimal()) / 2}\n");
        }

        return csv.ToString();
    }

    private static int DwellOf(JsonElement stage) => stage.GetProperty("parameters").TryGetProperty("phases", out var phases) && phases.ValueKind == JsonValueKind.Array
        ? phases.EnumerateArray().Sum(p => p.GetProperty("minDwellMinutes").GetInt32() + 1) : 0;

    private static int Largest(JsonElement stage, string list, string name) => stage.GetProperty(list).EnumerateArray().Select(w => w.GetProperty(name).GetInt32()).DefaultIfEmpty(0).Max();

    private static int MinutesOf(JsonElement stage, string name) => stage.TryGetProperty(name, out var v) && v.ValueKind == JsonValueKind.Number ? v.GetInt32() : 0;

    private async Task<JsonElement> SendAsync(string token, HttpRequestMessage request)
    {
        request.Headers.Authorization = new AuthenticationHeaderValue("Bearer", token);
        using var answer = await http.SendAsync(request);
        var text = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.IsSuccessStatusCode, $"{request.Method} {request.RequestUri}: {(int)answer.StatusCode} {text}");
        return JsonSerializer.Deserialize<JsonElement>(text);
    }
}
