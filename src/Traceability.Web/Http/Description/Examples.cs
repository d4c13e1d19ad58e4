using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.OpenApi;

namespace Traceability.Web.Http.Description;

/// <summary>The example of a doc comment as the JSON that its schema asks for.</summary>
internal static class Examples
{
    /// <summary>A number or a truth value where the schema takes one and the text is one; otherwise the text.</summary>
    public static JsonNode? Of(string? text, IOpenApiSchema? schema) =>
        text is null ? null
        : Takes(schema, JsonSchemaType.Boolean) && bool.TryParse(text, out var flag) ? JsonValue.Create(flag)
        : Takes(schema, JsonSchemaType.Integer) && long.TryParse(text, CultureInfo.InvariantCulture, out var whole)
            ? JsonValue.Create(whole)
        : Takes(schema, JsonSchemaType.Number) && decimal.TryParse(text, CultureInfo.InvariantCulture, out var number)
            ? JsonValue.Create(number)
        : JsonValue.Create(text);

    private static bool Takes(IOpenApiSchema? schema, JsonSchemaType type) => schema?.Type?.HasFlag(type) is true;
}
