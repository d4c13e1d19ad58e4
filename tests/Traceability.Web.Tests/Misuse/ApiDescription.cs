using System.Text.Json;
using System.Text.Json.Nodes;

namespace Traceability.Web.Tests.Misuse;

/// <summary>One POST of the OpenAPI document: its path, what its body is, and the schema of that body.</summary>
public sealed record PostOperation(string Path, string MediaType, JsonElement Schema, bool BodyRequired);

/// <summary>The service's own OpenAPI document, as far as a clumsy client needs it.</summary>
public sealed class ApiDescription(JsonElement document)
{
    public static async Task<ApiDescription> ReadAsync(Workshop workshop) => new((await workshop.GetAsync("/openapi/v1.json")).Expect(200));

    public IReadOnlyList<(string Path, string Method)> Operations =>
        [
            .. from path in document.At("paths").EnumerateObject()
            from method in path.Value.EnumerateObject()
            select (path.Name, method.Name),
        ];

    public IReadOnlyList<PostOperation> Posts =>
        [
            .. from path in document.At("paths").EnumerateObject()
            where path.Value.Has("post")
            select Post(path.Name, path.Value.GetProperty("post")),
        ];

    /// <summary>
    /// A body with every member that the schema names, of the right type and with plausible content; null when it takes any.
    /// </summary>
    public JsonNode? Example(JsonElement schema) =>
        Resolve(schema) switch
        {
            { ValueKind: not JsonValueKind.Object } => null,
            var s when s.TryGetProperty("enum", out var words) => JsonNode.Parse(
                words.EnumerateArray().First(w => w.ValueKind != JsonValueKind.Null).GetRawText()
            ),
            var s when s.TryGetProperty("properties", out var members) => new JsonObject(
                members.EnumerateObject().Select(m => KeyValuePair.Create(m.Name, Example(m.Value)))
            ),
            var s when TypeOf(s) == "array" => new JsonArray(Example(s.GetProperty("items"))),
            var s => TypeOf(s) switch
            {
                "string" when s.TryGetProperty("format", out var format) => format.GetString() switch
                {
                    "date-time" => "2026-01-05T08:00:00Z",
                    "date" => "2026-01-05",
                    "uuid" => Guid.NewGuid().ToString(),
                    _ => "x",
                },
                "string" => "x1",
                "integer" or "number" => 1,
                "boolean" => true,
                _ => null,
            },
        };

    private PostOperation Post(string path, JsonElement post)
    {
        if (!post.TryGetProperty("requestBody", out var body))
        {
            return new(path, "", default, false);
        }

        var content = Resolve(body).GetProperty("content").EnumerateObject().First();
        return new(
            path,
            content.Name,
            content.Value.TryGetProperty("schema", out var schema) ? schema : default,
            body.TryGetProperty("required", out var required) && required.GetBoolean()
        );
    }

    private static string? TypeOf(JsonElement schema) =>
        !schema.TryGetProperty("type", out var type) ? null
        : type.ValueKind == JsonValueKind.String ? type.GetString()
        : type.EnumerateArray().Select(t => t.GetString()).First(t => t != "null");

    private JsonElement Resolve(JsonElement schema)
    {
        if (schema.ValueKind == JsonValueKind.Object && schema.TryGetProperty("oneOf", out var either))
        {
            schema = either.EnumerateArray().First(e => !e.TryGetProperty("type", out var t) || t.ToString() != "null");
        }

        return schema.ValueKind == JsonValueKind.Object && schema.TryGetProperty("$ref", out var reference)
            ? document.At(reference.GetString()!["#/".Length..].Replace('/', '.'))
            : schema;
    }
}
