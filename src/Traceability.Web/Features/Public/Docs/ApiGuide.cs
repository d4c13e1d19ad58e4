using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace Traceability.Web.Features.Public.Docs;

/// <summary>One call as the page shows it, with a body to begin from.</summary>
public sealed record ApiCall(
    string Id,
    string Method,
    string Path,
    string? Summary,
    string? Who,
    IReadOnlyList<ApiParameter> Parameters,
    string? MediaType,
    string? Body,
    IReadOnlyList<(string Status, string Words)> Answers
);

/// <summary>Something that a call takes beside its body.</summary>
public sealed record ApiParameter(string Name, string Where, bool Required, string? Hint);

/// <summary>Reads our own OpenAPI document for people.</summary>
public sealed class ApiGuide([FromKeyedServices("v1")] IOpenApiDocumentProvider documents)
{
    private const int Deepest = 6;
    private static readonly JsonSerializerOptions Indented = new()
    {
        WriteIndented = true,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>All calls, under the thing that they are about.</summary>
    public async Task<IReadOnlyList<IGrouping<string, ApiCall>>> ReadAsync(CancellationToken cancellation)
    {
        var document = await documents.GetOpenApiDocumentAsync(cancellation);
        var calls =
            from path in document.Paths
            from operation in path.Value.Operations ?? []
            select CallOf(path.Key, operation.Key.Method, operation.Value);
        return [.. calls.GroupBy(c => SubjectOf(c.Path))];
    }

    private static ApiCall CallOf(string path, string method, OpenApiOperation operation)
    {
        var content = operation.RequestBody?.Content?.FirstOrDefault();
        var isJson = content?.Key == "application/json";
        return new(
            $"{method}-{path}"
                .ToLowerInvariant()
                .Replace('/', '-')
                .Replace("{", "", StringComparison.Ordinal)
                .Replace("}", "", StringComparison.Ordinal)
                .Replace('.', '-'),
            method,
            path,
            operation.Summary,
            operation.Description,
            [
                .. (operation.Parameters ?? []).Select(p => new ApiParameter(
                    p.Name ?? "",
                    p.In?.ToString().ToLowerInvariant() ?? "",
                    p.Required,
                    p.Description ?? p.Schema?.Format
                )),
            ],
            content?.Key ?? (method == HttpMethods.Post ? "application/json" : null),
            isJson ? Sketch(content!.Value.Value.Schema, 0)?.ToJsonString(Indented) : null,
            [.. (operation.Responses ?? []).Select(r => (r.Key, r.Value.Description ?? ""))]
        );
    }

    /// <summary>A body with every member and nothing in it.</summary>
    private static JsonNode? Sketch(IOpenApiSchema? schema, int depth)
    {
        if (schema is null || depth > Deepest)
        {
            return null;
        }

        if ((schema.OneOf ?? schema.AnyOf)?.FirstOrDefault(s => s.Type != JsonSchemaType.Null) is { } one)
        {
            return Sketch(one, depth);
        }

        if (schema.Enum?.FirstOrDefault() is { } first)
        {
            return first.DeepClone();
        }

        if (schema.Properties is { Count: > 0 } properties)
        {
            return new JsonObject(properties.Select(p => KeyValuePair.Create(p.Key, Sketch(p.Value, depth + 1))));
        }

        var type = schema.Type ?? 0;
        return type.HasFlag(JsonSchemaType.Array) ? new JsonArray(Sketch(schema.Items, depth + 1))
            : type.HasFlag(JsonSchemaType.Boolean) ? JsonValue.Create(false)
            : type.HasFlag(JsonSchemaType.Number) || type.HasFlag(JsonSchemaType.Integer) ? JsonValue.Create(0)
            : type.HasFlag(JsonSchemaType.String)
                ? JsonValue.Create(
                    schema.Format switch
                    {
                        "date-time" => "2026-01-31T14:20:00Z",
                        "date" => "2026-01-31",
                        _ => "",
                    }
                )
            : null;
    }

    private static string SubjectOf(string path) =>
        path.StartsWith("/api/v1/", StringComparison.Ordinal) ? path["/api/v1/".Length..].Split('/')[0] : path.TrimStart('/').Split('/')[0];
}
