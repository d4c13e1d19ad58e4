using System.Text.Json;

namespace Traceability.Web.Tests.Http;

public sealed class OpenApiTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task Every_body_of_the_document_is_the_body_of_its_own_endpoint()
    {
        var document = await DocumentAsync();
        Assert.StartsWith("3.1", document.Text("openapi"), StringComparison.Ordinal);
        string[] hold = ["instrument", "lot", "occurredAt", "part", "reason"],
            session = ["badge", "pin"],
            correction = ["occurredAt", "reason", "value"];
        Assert.Equal(hold, MembersOf(document, "/api/v1/holds"));
        Assert.Equal(session, MembersOf(document, "/api/v1/sessions"));
        Assert.Equal(correction, MembersOf(document, "/api/v1/readings/{id}/corrections"));
    }

    [Fact]
    public async Task Every_endpoint_says_in_words_what_it_does_and_who_may()
    {
        var document = await DocumentAsync();
        var operations = (
            from path in document.At("paths").EnumerateObject()
            from operation in path.Value.EnumerateObject()
            where operation.Value.ValueKind == JsonValueKind.Object
            select (Name: $"{operation.Name} {path.Name}", operation.Value)
        ).ToList();
        Assert.True(operations.Count > 50);
        Assert.Empty(
            operations
                .Where(o => !o.Value.Has("summary") || o.Value.Text("summary") == "" || !o.Value.Has("description"))
                .Select(o => o.Name)
        );
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

    [Fact]
    public async Task Every_answer_has_its_shape_unless_there_is_nothing_to_say()
    {
        var document = await DocumentAsync();
        var shapeless =
            from path in document.At("paths").EnumerateObject()
            from operation in path.Value.EnumerateObject()
            where !operation.Value.At("responses").EnumerateObject().Any(r => r.Name[0] == '2' && r.Value.Has("content"))
            select $"{operation.Name} {path.Name}";
        Assert.Equal(["delete /api/v1/sessions/current"], shapeless);
    }

    [Theory]
    [InlineData("/api/v1/parts/{serial}", "parts/{0}")]
    [InlineData("/api/v1/parts/{serial}/gates", "parts/{0}/gates")]
    [InlineData("/api/v1/parts/{serial}/history", "parts/{0}/history")]
    [InlineData("/api/v1/routes", "routes")]
    [InlineData("/api/v1/lots", "lots")]
    [InlineData("/api/v1/instruments", "instruments")]
    [InlineData("/api/v1/search", "search?q=FILM")]
    [InlineData("/api/v1/quality/film-lots", "quality/film-lots")]
    public async Task What_is_answered_has_the_members_that_the_document_names(string path, string asked)
    {
        var serial = await workshop.MountAsync();
        var document = await DocumentAsync();
        var answer = (await workshop.GetAsync(string.Format(System.Globalization.CultureInfo.InvariantCulture, asked, serial))).Expect(200);
        var schema = Resolve(
            document,
            document
                .At("paths")
                .GetProperty(path)
                .At("get.responses")
                .GetProperty("200")
                .At("content")
                .GetProperty("application/json")
                .At("schema")
        );
        AssertKnown(document, schema, answer, path);
    }

    private static void AssertKnown(JsonElement document, JsonElement schema, JsonElement value, string where)
    {
        schema = Resolve(document, schema);
        if (value.ValueKind == JsonValueKind.Array && schema.TryGetProperty("items", out var items))
        {
            foreach (var item in value.EnumerateArray())
            {
                AssertKnown(document, items, item, where + "[]");
            }
        }
        else if (value.ValueKind == JsonValueKind.Object && schema.TryGetProperty("properties", out var members))
        {
            foreach (var member in value.EnumerateObject())
            {
                Assert.True(members.TryGetProperty(member.Name, out var known), $"{where}.{member.Name} is not in the document");
                AssertKnown(document, known, member.Value, $"{where}.{member.Name}");
            }
        }
    }

    private async Task<JsonElement> DocumentAsync() => (await workshop.GetAsync("/openapi/v1.json", null)).Expect(200);

    private static string[] MembersOf(JsonElement document, string path) =>
        [.. BodyOf(document, path).At("properties").EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal)];

    private static JsonElement BodyOf(JsonElement document, string path) =>
        Resolve(
            document,
            document.At("paths").GetProperty(path).At("post.requestBody.content").GetProperty("application/json").At("schema")
        );

    private static JsonElement Resolve(JsonElement document, JsonElement schema) =>
        schema.TryGetProperty("$ref", out var reference)
            ? document.At("components.schemas").GetProperty(reference.GetString()!.Split('/')[^1])
            : schema;
}
