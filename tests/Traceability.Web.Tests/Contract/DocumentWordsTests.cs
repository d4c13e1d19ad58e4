using System.Text.Json;

namespace Traceability.Web.Tests.Contract;

/// <summary>Whoever reads the OpenAPI document alone knows of every member and parameter what it is and what one looks like.</summary>
public sealed class DocumentWordsTests(Workshop workshop) : IClassFixture<Workshop>
{
    private static readonly string[] Simple = ["string", "number", "integer", "boolean"];

    [Fact]
    public async Task Every_member_and_every_parameter_says_what_it_is()
    {
        var document = await DocumentAsync();

        Assert.Empty(
            Members(document)
                .Concat(Parameters(document))
                .Where(m => !IsDescribed(m.Said) && !IsDescribed(Resolved(document, m.Schema)))
                .Select(m => m.Name)
        );
    }

    [Fact]
    public async Task Every_simple_member_and_parameter_shows_an_example()
    {
        var document = await DocumentAsync();

        Assert.Empty(
            Members(document)
                .Concat(Parameters(document))
                .Where(m => IsSimple(Resolved(document, m.Schema)) && !m.Said.TryGetProperty("example", out _) && !HasExamples(m.Said))
                .Select(m => m.Name)
        );
    }

    private static IEnumerable<(string Name, JsonElement Said, JsonElement Schema)> Members(JsonElement document) =>
        from shape in document.At("components.schemas").EnumerateObject()
        where shape.Value.TryGetProperty("properties", out _)
        from member in shape.Value.At("properties").EnumerateObject()
        select ($"{shape.Name}.{member.Name}", member.Value, member.Value);

    private static IEnumerable<(string Name, JsonElement Said, JsonElement Schema)> Parameters(JsonElement document) =>
        from path in document.At("paths").EnumerateObject()
        from operation in path.Value.EnumerateObject()
        where operation.Value.TryGetProperty("parameters", out _)
        from parameter in operation.Value.List("parameters")
        select ($"{operation.Value.Text("operationId")}({parameter.Text("name")})", parameter, parameter.At("schema"));

    private static bool HasExamples(JsonElement said) =>
        said.TryGetProperty("examples", out var examples) && examples.ValueKind == JsonValueKind.Array && examples.GetArrayLength() > 0;

    // A closed list of words shows them all; what is made of members shows those.
    private static bool IsSimple(JsonElement schema) =>
        !schema.TryGetProperty("enum", out _)
        && schema.TryGetProperty("type", out var type)
        && (type.ValueKind == JsonValueKind.Array ? [.. type.EnumerateArray()] : new[] { type })
            .Select(t => t.GetString()!)
            .Where(t => t != "null")
            .All(Simple.Contains);

    private static bool IsDescribed(JsonElement said) => said.Has("description") && said.Text("description").Length > 0;

    private static JsonElement Resolved(JsonElement document, JsonElement schema) =>
        schema.TryGetProperty("$ref", out var reference)
            ? document.At("components.schemas").GetProperty(reference.GetString()!.Split('/')[^1])
            : schema;

    private async Task<JsonElement> DocumentAsync() => (await workshop.GetAsync("/openapi/v1.json", null)).Expect(200);
}
