using System.Text.Json;

namespace Traceability.Web.Tests.Http;

public sealed class OpenApiTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task Every_body_of_the_document_is_the_body_of_its_own_endpoint()
    {
        var document = await DocumentAsync();
        Assert.StartsWith("3.1", document.Text("openapi"), StringComparison.Ordinal);
        string[] hold = ["instrument", "lot", "occurredAt", "part", "reason"], session = ["badge", "pin"], correction = ["occurredAt", "reason", "value"];
        Assert.Equal(hold, MembersOf(document, "/api/v1/holds"));
        Assert.Equal(session, MembersOf(document, "/api/v1/sessions"));
        Assert.Equal(correction, MembersOf(document, "/api/v1/readings/{id}/corrections"));
    }

    [Fact]
    public async Task Every_endpoint_says_in_words_what_it_does_and_who_may()
    {
        var document = await DocumentAsync();
        var operations = (from path in document.At("paths").EnumerateObject()
                          from operation in path.Value.EnumerateObject()
                          where operation.Value.ValueKind == JsonValueKind.Object
                          select (Name: $"{operation.Name} {path.Name}", operation.Value)).ToList();
        Assert.True(operations.Count > 50);
        Assert.Empty(operations.Where(o => !o.Value.Has("summary") || o.Value.Text("summary") == "" || !o.Value.Has("description")).Select(o => o.Name));
        Assert.Equal("For: quality.", operations.Single(o => o.Name == "post /api/v1/holds").Value.Text("description"));
        Assert.Equal("For anybody.", operations.Single(o => o.Name == "get /api/v1/verify/{certificateId}").Value.Text("description"));
        Assert.True(operations.Single(o => o.Name == "post /api/v1/holds").Value.Has("security"));
    }

    [Fact]
    public async Task A_text_is_said_to_be_a_text()
    {
        var document = await DocumentAsync();
        Assert.Equal("string", BodyOf(document, "/api/v1/sessions").At("properties.pin").Text("type"));
    }

    [Fact]
    public async Task The_page_of_the_interface_lists_every_call_without_signing_in()
    {
        var page = await workshop.GetAsync("/docs", null);
        page.Expect(200);
        foreach (var path in (await DocumentAsync()).At("paths").EnumerateObject())
        {
            Assert.Contains($"data-path=\"{path.Name}\"", page.Body, StringComparison.Ordinal);
        }
    }

    private async Task<JsonElement> DocumentAsync() => (await workshop.GetAsync("/openapi/v1.json", null)).Expect(200);

    private static string[] MembersOf(JsonElement document, string path) =>
        [.. BodyOf(document, path).At("properties").EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal)];

    private static JsonElement BodyOf(JsonElement document, string path) =>
        Resolve(document, document.At("paths").GetProperty(path).At("post.requestBody.content").GetProperty("application/json").At("schema"));

    private static JsonElement Resolve(JsonElement document, JsonElement schema) =>
        schema.TryGetProperty("$ref", out var reference) ? document.At("components.schemas").GetProperty(reference.GetString()!.Split('/')[^1]) : schema;
}
