using System.Text.Json;
using System.Text.RegularExpressions;

namespace Traceability.Web.Tests.Contract;

/// <summary>
/// The rules by which a linter judges the OpenAPI document, as far as they matter here. DEVELOPERS.md names the command that asks the
/// linter itself.
/// </summary>
public sealed partial class DocumentRulesTests(Workshop workshop) : IClassFixture<Workshop>
{
    private const string Schemas = "#/components/schemas/";

    [Fact]
    public async Task Every_operation_has_a_name_of_its_own_that_can_stand_in_an_address()
    {
        var names = (await OperationsAsync()).Select(o => o.Value.Text("operationId")).ToList();
        Assert.Equal(names.Distinct(), names);
        Assert.All(names, name => Assert.Matches("^[a-z][A-Za-z]+$", name));
    }

    [Fact]
    public async Task Every_operation_says_what_it_does_who_may_and_what_can_go_wrong()
    {
        foreach (var (name, operation) in await OperationsAsync())
        {
            Assert.True(operation.Text("summary").Length > 5, name);
            Assert.True(operation.TryGetProperty("security", out _), name);
            var statuses = operation.At("responses").EnumerateObject().Select(r => r.Name).ToList();
            Assert.True(statuses.Exists(s => s[0] == '2') && statuses.Exists(s => s[0] == '4'), name);
            Assert.All(operation.At("responses").EnumerateObject(), r => Assert.NotEmpty(r.Value.Text("description")));
        }
    }

    [Fact]
    public async Task Every_operation_is_under_a_subject_that_has_a_sentence()
    {
        var document = await DocumentAsync();
        var described = document.List("tags").ToDictionary(t => t.Text("name"), t => t.Text("description"));
        Assert.All(described.Values, sentence => Assert.Matches("[.?]$", sentence));
        Assert.Equal(
            described.Keys.Order(StringComparer.Ordinal),
            (await OperationsAsync()).Select(o => o.Value.List("tags").Single().GetString()!).Distinct().Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public async Task Instruments_may_send_with_a_token_of_their_own_and_nothing_else()
    {
        var document = await DocumentAsync();
        Assert.Equal(
            ["instrument", "session"],
            document.At("components.securitySchemes").EnumerateObject().Select(s => s.Name).Order(StringComparer.Ordinal)
        );
        Assert.Equal(
            ["attachEvidence", "keepLoadLog", "sendReading", "takeReadings"],
            (await OperationsAsync())
                .Where(o => o.Value.List("security").Any(s => s.TryGetProperty("instrument", out _)))
                .Select(o => o.Value.Text("operationId"))
                .Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public async Task The_server_is_the_one_that_was_asked_and_the_licence_is_said()
    {
        var document = await DocumentAsync();
        Assert.Equal("/", Assert.Single(document.List("servers")).Text("url"));
        Assert.NotEmpty(document.Text("info.license.name"));
        Assert.StartsWith("LicenseRef-", document.Text("info.license.identifier"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_shape_that_is_named_is_used_and_every_shape_that_is_used_is_named()
    {
        var document = await DocumentAsync();
        var used = Reference().Matches(document.GetRawText()).Select(m => m.Groups["name"].Value).Distinct();
        Assert.Equal(
            document.At("components.schemas").EnumerateObject().Select(s => s.Name).Order(StringComparer.Ordinal),
            used.Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public async Task A_closed_list_of_words_is_named_and_never_holds_null()
    {
        var document = await DocumentAsync();
        var lists = document.At("components.schemas").EnumerateObject().Where(s => s.Value.TryGetProperty("enum", out _)).ToList();
        Assert.Contains(lists, l => l.Name == "Role");
        Assert.All(lists, l => Assert.Equal("string", l.Value.Text("type")));
        Assert.All(lists, l => Assert.DoesNotContain(l.Value.List("enum"), w => w.ValueKind == JsonValueKind.Null));
    }

    [Fact]
    public async Task A_body_that_is_a_file_says_of_what_kind()
    {
        var operations = (await OperationsAsync()).ToDictionary(o => o.Value.Text("operationId"), o => o.Value);
        Assert.Equal(["text/csv", "audio/wav", "image/jpeg", "image/png"], Kinds("attachEvidence"));
        Assert.Equal(["text/yaml"], Kinds("loadRoute"));
        Assert.Equal(["application/pdf"], Kinds("verifyFile"));

        IEnumerable<string> Kinds(string operation) =>
            operations[operation].At("requestBody.content").EnumerateObject().Select(c => c.Name);
    }

    private async Task<JsonElement> DocumentAsync() => (await workshop.GetAsync("/openapi/v1.json", null)).Expect(200);

    private async Task<IReadOnlyList<(string Name, JsonElement Value)>> OperationsAsync() =>
        [
            .. from path in (await DocumentAsync()).At("paths").EnumerateObject()
            from operation in path.Value.EnumerateObject()
            select ($"{operation.Name} {path.Name}", operation.Value),
        ];

    [GeneratedRegex("\"\\$ref\": ?\"" + Schemas + "(?<name>[^\"]+)\"")]
    private static partial Regex Reference();
}
