using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Traceability.Web.Tests.Http;

/// <summary>Sends nonsense to every endpoint that the interface description names: whatever a client sends, it is told what is wrong with it.</summary>
public sealed class NeverOurFaultTests(Workshop workshop) : IClassFixture<Workshop>
{
    private static readonly string[] Roles = [Workshop.Importer, Workshop.ServiceDesk, Workshop.Lead, Workshop.Builder];

    private static readonly JsonNode?[] Nonsense =
    [
        null, "", " ", "\0", "x", "\u202e%_\\';--", new string('y', 3000), 0, -1, 1e300, 0.1, true, new JsonArray(), new JsonArray("x", null), new JsonObject(),
        "0001-01-01T00:00:00Z", "9999-12-31T23:59:59Z", "2026-06-31T00:00:00+99:00", "NaN", "-1e999", "00000000-0000-0000-0000-000000000000",
    ];

    private static readonly string[] Addresses = ["x", "%F0%9F%8E%99", "..%2F..", "%25", "0", "00000000-0000-0000-0000-000000000000", new string('z', 1500)];

    [Fact]
    public async Task Nonsense_in_bodies_is_never_a_failure_of_the_service()
    {
        var description = await DescriptionAsync();
        var failures = new List<string>();
        foreach (var (path, body) in Posts(description))
        {
            foreach (var sent in Bodies(body).Append("").Append("null").Append("[]").Append("{").Append("""{"unknown":1}""").Append(new string('[', 3000)))
            {
                await TryAsync(failures, new(HttpMethod.Post, path) { Content = new StringContent(sent, Encoding.UTF8, "application/json") }, sent);
            }
        }

        Assert.Empty(failures);
    }

    [Fact]
    public async Task Nonsense_in_addresses_is_never_a_failure_of_the_service()
    {
        var description = await DescriptionAsync();
        var failures = new List<string>();
        foreach (var (path, operations) in description["paths"]!.AsObject().Where(p => p.Value!.AsObject().ContainsKey("get")))
        {
            var names = (operations!["get"]!["parameters"]?.AsArray() ?? []).Where(p => (string?)p!["in"] == "query").Select(p => (string)p!["name"]!).Append("limit").Append("cursor").ToList();
            foreach (var address in Addresses)
            {
                var query = string.Join('&', names.Select(n => $"{n}={address}"));
                await TryAsync(failures, new(HttpMethod.Get, Filled(path, address)), "");
                await TryAsync(failures, new(HttpMethod.Get, $"{Filled(path, "x")}?{query}"), "");
            }

            await TryAsync(failures, new(HttpMethod.Get, $"{Filled(path, "x")}?{string.Join('&', names.Select(n => $"{n}=%00"))}"), "");
        }

        Assert.Empty(failures);
    }

    private async Task TryAsync(List<string> failures, HttpRequestMessage request, string sent)
    {
        var asked = $"{request.Method} {request.RequestUri}";
        var reply = await workshop.SendAsync(request, Roles[failures.Count % Roles.Length]);
        if ((int)reply.Status >= 500)
        {
            failures.Add($"{asked} {sent[..Math.Min(200, sent.Length)]}: {(int)reply.Status}");
        }
    }

    private static IEnumerable<(string Path, JsonObject? Body)> Posts(JsonObject description) =>
        from path in description["paths"]!.AsObject()
        let post = path.Value!["post"]
        where post is not null
        let schema = post["requestBody"]?["content"]?["application/json"]?["schema"]
        select (Filled(path.Key, "00000000-0000-0000-0000-000000000001"), Resolved(description, schema));

    /// <summary>One body for each member and each piece of nonsense; the other members hold something harmless.</summary>
    private static IEnumerable<string> Bodies(JsonObject? schema)
    {
        var members = schema?["properties"]?.AsObject().Select(p => p.Key).ToList() ?? [];
        foreach (var member in members)
        {
            foreach (var value in Nonsense)
            {
                var body = new JsonObject(members.Where(m => m != member && m != "occurredAt").Select(m => KeyValuePair.Create<string, JsonNode?>(m, m is "reason" or "kind" or "model" or "serial" ? "x" : null)).Where(m => m.Value is not null));
                body[member] = value?.DeepClone();
                yield return body.ToJsonString();
            }
        }
    }

    private static JsonObject? Resolved(JsonObject description, JsonNode? schema) =>
        (string?)schema?["$ref"] is { } reference ? description["components"]!["schemas"]![reference.Split('/')[^1]]!.AsObject()
        : schema?["oneOf"] is JsonArray choices ? Resolved(description, choices.FirstOrDefault(c => c!["$ref"] is not null))
        : schema as JsonObject;

    private static string Filled(string path, string value) => System.Text.RegularExpressions.Regex.Replace(path, @"\{[^}]+\}", value);

    private async Task<JsonObject> DescriptionAsync() => JsonSerializer.Deserialize<JsonObject>((await workshop.GetAsync("/openapi/v1.json", null)).Expect(200))!;
}
