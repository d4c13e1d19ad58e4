using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;

namespace Traceability.Web.Tests.Contract;

/// <summary>Where a child part will go: the stage of its parent that fits it, and the position.</summary>
internal sealed record Destination(string Parent, JsonElement Stage, string Position);

/// <summary>A stage that is about to be done on a part: its route, which of its stages, and where the part will go afterwards.</summary>
internal sealed record StageAhead(string Serial, IReadOnlyList<JsonElement> Stages, int Index, Destination? Destination)
{
    public JsonElement Stage => Stages[Index];
}

/// <summary>
/// A client that knows the HTTP contract and nothing of the workshop: it reads the routes and does what they say, with nominal values,
/// soak logs made from the phases and responses made from the mask, stepping its own clock over the waits.
/// </summary>
internal sealed class GenericClient(HttpClient http, string quality, string importer)
{
    private readonly HashSet<(string Instrument, DateTime Day)> checkedOn = [];

    /// <summary>The client's clock: some days ago, so that every wait can be stepped over without reaching the future.</summary>
    public DateTimeOffset Clock { get; private set; } = DateTimeOffset.UtcNow.AddDays(-9);

    /// <summary>Called before every stage of every part.</summary>
    public Func<StageAhead, Task> BeforeStage { get; set; } = _ => Task.CompletedTask;

    /// <summary>What closing the stages answered, part by part.</summary>
    public List<JsonElement> Closings { get; } = [];

    /// <summary>The lots that went in, by their kind.</summary>
    public Dictionary<string, string> Lots { get; } = [];

    /// <summary>Signs in and gives the token.</summary>
    public static async Task<string> SignInAsync(HttpClient http, string badge, string pin)
    {
        using var answer = await http.PostAsJsonAsync("/api/v1/sessions", new { badge, pin });
        return (await answer.Content.ReadFromJsonAsync<JsonElement>()).Text("token");
    }

    /// <summary>Makes a finished part of a kind, each child just before it is fitted; gives its serial.</summary>
    public async Task<string> MakeAsync(string model, string kind, Destination? destination = null)
    {
        var stages = (await GetAsync($"routes/{model}/{kind}")).List("stages");
        var serial = (
            await DoneAsync(
                importer,
                "parts",
                new
                {
                    kind,
                    model,
                    occurredAt = Clock,
                }
            )
        ).Text("serial");
        for (var i = 0; i < stages.Count; i++)
        {
            var children = new Dictionary<string, string>();
            foreach (var slot in stages[i].List("slots").Where(s => s.At("accepts").Has("partKind")))
            {
                var position = slot.Text("position");
                children[position] = await MakeAsync(model, slot.Text("accepts.partKind"), new(serial, stages[i], position));
            }

            await BeforeStage(new(serial, stages, i, destination));
            await DoAsync(serial, stages[i], children);
        }

        return serial;
    }

    /// <summary>Tries to open a stage as things stand; gives the answer as it comes.</summary>
    public async Task<Reply> TryOpenAsync(string serial, JsonElement stage) =>
        await PostAsync(importer, $"parts/{serial}/attempts", await OpeningAsync(stage));

    /// <summary>Tries to fit a part in its parent in one record; gives the answer as it comes.</summary>
    public async Task<Reply> TryFitAsync(Destination into, string child) =>
        await PostAsync(
            importer,
            $"parts/{into.Parent}/records",
            new
            {
                stage = into.Stage.Text("code"),
                station = await StationAsync(),
                instruments = await InstrumentsAsync(into.Stage),
                fittings = new[] { new { position = into.Position, child } },
                occurredAt = Clock,
            }
        );

    /// <summary>Asks the quality lead for the certificate; gives the answer as it comes.</summary>
    public Task<Reply> TryCertificateAsync(string serial) => PostAsync(quality, $"parts/{serial}/certificates", null);

    public async Task<JsonElement> GetAsync(string path)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, $"/api/v1/{path}");
        return (await SendAsync(importer, request)).Expect(200);
    }

    public async Task<byte[]> BytesAsync(string path)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, $"/api/v1/{path}");
        request.Headers.Authorization = new("Bearer", importer);
        using var answer = await http.SendAsync(request);
        return await answer.Content.ReadAsByteArrayAsync();
    }

    private async Task DoAsync(string serial, JsonElement stage, IReadOnlyDictionary<string, string> children)
    {
        Clock = Clock.AddMinutes(ExampleFiles.Largest(stage, "waits", "minimumMinutes") + 5);
        var opened = (await PostAsync(importer, $"parts/{serial}/attempts", await OpeningAsync(stage))).Expect(201).Text("id");
        foreach (var slot in stage.List("slots"))
        {
            await DoneAsync(importer, $"attempts/{opened}/fittings", await FittingAsync(slot, children));
        }

        foreach (var c in stage.List("characteristics").Where(c => c.At("entered").GetBoolean()))
        {
            await DoneAsync(
                importer,
                $"attempts/{opened}/readings",
                new
                {
                    characteristic = c.Text("name"),
                    value = ExampleFiles.ValueFor(c),
                    occurredAt = Clock,
                }
            );
        }

        var started = Clock;
        Clock = Clock.AddMinutes(ExampleFiles.MinutesOpen(stage) + 1);
        foreach (var evidence in stage.List("evidence"))
        {
            await EvidenceAsync(opened, stage, evidence, started);
        }

        var closed = (await PostAsync(importer, $"attempts/{opened}/close", new { occurredAt = Clock })).Expect(200);
        Assert.True(closed.Text("verdict") == "pass", $"{stage.Text("code")} of {serial}: {closed}");
        Closings.Add(closed);
    }

    private async Task<object> OpeningAsync(JsonElement stage) =>
        new
        {
            stage = stage.Text("code"),
            station = await StationAsync(),
            instruments = await InstrumentsAsync(stage),
            occurredAt = Clock,
        };

    private async Task<string> StationAsync() => (await GetAsync("stations")).List()[0].Text("code");

    /// <summary>A usable instrument of every kind asked for; one with a reference is checked against it on the client's day.</summary>
    private async Task<List<string>> InstrumentsAsync(JsonElement stage)
    {
        var all = (await GetAsync("instruments")).List();
        var chosen = stage
            .List("instrumentKinds")
            .Select(kind => all.First(i => i.Text("kind") == kind.GetString() && i.Text("state") == "usable"))
            .ToList();
        foreach (var instrument in chosen.Where(i => i.Has("checkNominal") && checkedOn.Add((i.Text("code"), Clock.UtcDateTime.Date))))
        {
            await DoneAsync(
                importer,
                $"instruments/{instrument.Text("code")}/checks",
                new { value = instrument.At("checkNominal").GetDecimal(), occurredAt = Clock }
            );
        }

        return chosen.ConvertAll(i => i.Text("code"));
    }

    private async Task<object> FittingAsync(JsonElement slot, IReadOnlyDictionary<string, string> children)
    {
        var position = slot.Text("position");
        if (children.TryGetValue(position, out var child))
        {
            return new
            {
                position,
                child,
                occurredAt = Clock,
            };
        }

        var kind = slot.Text("accepts.lotKind");
        if (!Lots.TryGetValue(kind, out var lot))
        {
            Lots[kind] = lot = await ReceiveAsync(kind);
        }

        return new
        {
            position,
            lot,
            occurredAt = Clock,
        };
    }

    private async Task<string> ReceiveAsync(string kind)
    {
        var film = kind == "film" ? new { baseThicknessUm = 6.0, metalThicknessNm = 50.0 } : null;
        var received = film is null
            ? await DoneAsync(
                quality,
                "lots",
                new
                {
                    kind,
                    supplier = "Invented supplier",
                    supplierLot = "G-1",
                    quantity = 1000,
                    unit = "pcs",
                }
            )
            : await DoneAsync(
                quality,
                "lots",
                new
                {
                    kind,
                    supplier = "Invented supplier",
                    supplierLot = "G-1",
                    quantity = 1000,
                    unit = "m",
                    film,
                }
            );
        var number = received.Text("number");
        await DoneAsync(quality, $"lots/{number}/release", new { reason = "generic client" });
        return number;
    }

    private async Task EvidenceAsync(string attempt, JsonElement stage, JsonElement evidence, DateTimeOffset started)
    {
        if (ExampleFiles.For(stage, evidence, started) is not { } text)
        {
            Assert.False(evidence.At("required").GetBoolean(), $"this client cannot make {evidence.Text("kind")}");
            return;
        }

        using var request = new HttpRequestMessage(HttpMethod.Post, $"/api/v1/attempts/{attempt}/evidence?name={evidence.Text("name")}")
        {
            Content = new StringContent(text, Encoding.UTF8, "text/csv"),
        };
        (await SendAsync(importer, request)).Expect(201);
    }

    /// <summary>POST; anything but success fails the test with the answer's own words.</summary>
    private async Task<JsonElement> DoneAsync(string token, string path, object body)
    {
        var reply = await PostAsync(token, path, body);
        Assert.True((int)reply.Status < 300, $"{path}: {(int)reply.Status} {reply.Body}");
        return reply.Json;
    }

    private async Task<Reply> PostAsync(string token, string path, object? body)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, $"/api/v1/{path}")
        {
            Content = body is null ? null : JsonContent.Create(body),
        };
        return await SendAsync(token, request);
    }

    private async Task<Reply> SendAsync(string token, HttpRequestMessage request)
    {
        request.Headers.Authorization = new AuthenticationHeaderValue("Bearer", token);
        using var answer = await http.SendAsync(request);
        var text = await answer.Content.ReadAsStringAsync();
        return new(answer.StatusCode, JsonSerializer.Deserialize<JsonElement>(text), text);
    }
}
