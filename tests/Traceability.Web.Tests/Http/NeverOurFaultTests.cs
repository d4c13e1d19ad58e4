using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Traceability.Web.Tests.Http;

/// <summary>
/// Sends nonsense to every endpoint that the interface description names: whatever a client sends, it is told what is wrong with it.
/// </summary>
public sealed class NeverOurFaultTests(Workshop workshop) : IClassFixture<Workshop>
{
    private const string Everybody = "A1";

    private static readonly JsonNode?[] Nonsense =
    [
        null,
        "",
        " ",
        "\0",
        "x",
        "\u202e%_\\';--",
        new string('y', 3000),
        0,
        -1,
        1e300,
        0.1,
        true,
        new JsonArray(),
        new JsonArray("x", null),
        new JsonObject(),
        "0001-01-01T00:00:00Z",
        "9999-12-31T23:59:59Z",
        "2026-06-31T00:00:00+99:00",
        "NaN",
        "-1e999",
        "00000000-0000-0000-0000-000000000000",
    ];

    private static readonly string[] Addresses =
    [
        "x",
        "%F0%9F%8E%99",
        "..%2F..",
        "%25",
        "0",
        "00000000-0000-0000-0000-000000000000",
        new string('z', 1500),
    ];

    [Fact]
    public async Task Nonsense_in_bodies_is_never_a_failure_of_the_service()
    {
        var description = await DescriptionAsync();
        var failures = new List<string>();
        var serial = await workshop.RegisterAsync("diaphragm");
        var attempt = (await workshop.OpenAsync(serial, "mount")).ToString();
        foreach (var (template, body) in Posts(description))
        {
            var path = Filled(
                template
                    .Replace("{serial}", serial, StringComparison.Ordinal)
                    .Replace("{number}", Workshop.Film, StringComparison.Ordinal)
                    .Replace("instruments/{code}", "instruments/RB-1", StringComparison.Ordinal)
                    .Replace("stations/{code}", "stations/BENCH-1", StringComparison.Ordinal),
                attempt
            );
            foreach (
                var sent in Bodies(body)
                    .Append("")
                    .Append("null")
                    .Append("[]")
                    .Append("{")
                    .Append("""{"unknown":1}""")
                    .Append(new string('[', 3000))
            )
            {
                await TryAsync(
                    failures,
                    new(HttpMethod.Post, path) { Content = new StringContent(sent, Encoding.UTF8, "application/json") },
                    sent
                );
            }
        }

        Assert.True(failures.Count == 0, string.Join('\n', failures));
    }

    [Fact]
    public async Task Nonsense_in_addresses_is_never_a_failure_of_the_service()
    {
        var description = await DescriptionAsync();
        var failures = new List<string>();
        foreach (var (path, operations) in description["paths"]!.AsObject().Where(p => p.Value!.AsObject().ContainsKey("get")))
        {
            var names = (operations!["get"]!["parameters"]?.AsArray() ?? [])
                .Where(p => (string?)p!["in"] == "query")
                .Select(p => (string)p!["name"]!)
                .Append("limit")
                .Append("cursor")
                .ToList();
            foreach (var address in Addresses)
            {
                var query = string.Join('&', names.Select(n => $"{n}={address}"));
                await TryAsync(failures, new(HttpMethod.Get, Filled(path, address)), "");
                await TryAsync(failures, new(HttpMethod.Get, $"{Filled(path, "x")}?{query}"), "");
            }

            await TryAsync(failures, new(HttpMethod.Get, $"{Filled(path, "x")}?{string.Join('&', names.Select(n => $"{n}=%00"))}"), "");
        }

        Assert.True(failures.Count == 0, string.Join('\n', failures));
    }

    [Fact]
    public async Task The_description_still_says_that_texts_are_texts_and_lists_are_lists()
    {
        var load = (await DescriptionAsync())["paths"]!["/api/v1/loads"]!["post"]!;
        var members = Resolved(await DescriptionAsync(), load["requestBody"]!["content"]!["application/json"]!["schema"])!["properties"]!;
        Assert.Equal("string", (string?)members["stage"]!["type"]);
        Assert.Equal("date-time", (string?)members["occurredAt"]!["format"]);
        Assert.Equal(("array", "string"), ((string?)members["parts"]!["type"], (string?)members["parts"]!["items"]!["type"]));
    }

    private async Task TryAsync(List<string> failures, HttpRequestMessage request, string sent)
    {
        var asked = $"{request.Method} {request.RequestUri}";
        var reply = await workshop.SendAsync(request, Everybody);
        if ((int)reply.Status >= 500)
        {
            failures.Add($"{asked} {sent[..Math.Min(200, sent.Length)]}: {(int)reply.Status}");
        }
    }

    private static IEnumerable<(string Path, JsonObject? Body)> Posts(JsonObject description) =>
        from path in description["paths"]!.AsObject()
        let post = path.Value!["post"]
        where post is not null
        let schema = OneOrMany(path.Key) is { } named
            ? description["components"]!["schemas"]![named]
            : post["requestBody"]?["content"]?["application/json"]?["schema"]
        select (path.Key, Resolved(description, schema));

    /// <summary>Bodies that are one thing or a list of them are described as anything; here one thing is sent.</summary>
    private static string? OneOrMany(string path) =>
        path.EndsWith("/readings", StringComparison.Ordinal) ? "EnterReadingsInput"
        : path.EndsWith("/fittings", StringComparison.Ordinal) ? "FitAtPositionsInput"
        : null;

    /// <summary>One body for each member and each piece of nonsense; the other members hold something harmless.</summary>
    private static IEnumerable<string> Bodies(JsonObject? schema)
    {
        var members = schema?["properties"]?.AsObject().Select(p => p.Key).ToList() ?? [];
        foreach (var member in members)
        {
            foreach (var value in Nonsense)
            {
                var body = new JsonObject(
                    members
                        .Where(m => m != member && m != "occurredAt")
                        .Select(m => KeyValuePair.Create<string, JsonNode?>(m, m is "reason" or "kind" or "model" or "serial" ? "x" : null))
                        .Where(m => m.Value is not null)
                );
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

    /// <summary>The description, asked for by somebody who may do everything.</summary>
    private async Task<JsonObject> DescriptionAsync()
    {
        if (!(await workshop.GetAsync("people")).Expect(200).Texts("items", "badge").Contains(Everybody))
        {
            await workshop.PersonAsync(Everybody, "Ada All", "builder", "quality", "service", "lead", "importer", "instrument");
        }

        return JsonSerializer.Deserialize<JsonObject>((await workshop.GetAsync("/openapi/v1.json", null)).Expect(200))!;
    }
}
