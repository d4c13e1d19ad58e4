using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace Traceability.Web.Tests.Contract;

/// <summary>
/// The schemas of the service's own OpenAPI document (3.1, whose schemas are JSON Schema 2020-12), made strict: a member that the document
/// does not name is an error too.
/// </summary>
public sealed class DocumentedShapes(JsonElement document)
{
    private const string Components = "#/components/schemas/",
        Definitions = "#/$defs/";
    private static readonly EvaluationOptions Whole = new() { OutputFormat = OutputFormat.List, RequireFormatValidation = true };

    private readonly JsonObject definitions = Strict(document.At("components.schemas"));

    /// <summary>Every GET whose answer is JSON, by its path.</summary>
    public IReadOnlyList<string> Gets =>
        [
            .. from path in document.At("paths").EnumerateObject()
            where path.Value.Has("get") && AnswerOf(path.Name) is not null
            select path.Name,
        ];

    /// <summary>What in this answer of a GET contradicts the document; nothing when it keeps to it.</summary>
    public IReadOnlyList<string> Contradictions(string path, JsonElement answer) => Contradictions(AnswerOf(path)!.Value, answer);

    /// <summary>What in a problem contradicts the document.</summary>
    public IReadOnlyList<string> OfProblem(JsonElement problem) =>
        Contradictions(
            document
                .At("paths")
                .GetProperty("/api/v1/parts")
                .At("get.responses")
                .GetProperty("400")
                .At("content")
                .GetProperty("application/problem+json")
                .At("schema"),
            problem
        );

    private IReadOnlyList<string> Contradictions(JsonElement shape, JsonElement answer)
    {
        var schema = new JsonObject { ["$schema"] = "https://json-schema.org/draft/2020-12/schema", ["$defs"] = definitions.DeepClone() };
        foreach (var (name, value) in Strict(shape))
        {
            schema[name] = value?.DeepClone();
        }

        var result = JsonSchema.FromText(schema.ToJsonString()).Evaluate(JsonNode.Parse(answer.GetRawText()), Whole);
        return result.IsValid
            ? []
            :
            [
                .. result
                    .Details.Where(d => d.Errors is not null)
                    .SelectMany(d => d.Errors!, (d, e) => $"{d.InstanceLocation}: {e.Value}")
                    .Distinct(),
            ];
    }

    private JsonElement? AnswerOf(string path) =>
        document.At("paths").GetProperty(path).At("get.responses").TryGetProperty("200", out var good)
        && good.TryGetProperty("content", out var content)
        && content.TryGetProperty("application/json", out var json)
        && json.TryGetProperty("schema", out var schema)
            ? schema
            : null;

    private static JsonObject Strict(JsonElement schemas)
    {
        var all = JsonNode.Parse(schemas.GetRawText().Replace(Components, Definitions, StringComparison.Ordinal))!.AsObject();
        Close(all);
        return all;
    }

    private static void Close(JsonNode? node)
    {
        switch (node)
        {
            case JsonObject inner:
                foreach (var (_, value) in inner.ToList())
                {
                    Close(value);
                }

                if (inner["properties"] is JsonObject && !inner.ContainsKey("additionalProperties") && inner.ContainsKey("type"))
                {
                    inner["additionalProperties"] = false;
                }

                break;
            case JsonArray list:
                list.ToList().ForEach(Close);
                break;
        }
    }
}
