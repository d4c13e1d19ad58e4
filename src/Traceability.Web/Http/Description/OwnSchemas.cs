using System.Text.Json.Nodes;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;
using Traceability.Domain.Certificates;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Http.Description;

/// <summary>
/// What is read and written by rules of our own: a number may be a JSON number or a text that keeps its zeros; a time is a text with its
/// zone; a text may be one of a closed list.
/// </summary>
internal static class OwnSchemas
{
    private const string SchemaId = "x-schema-id";

    public static Task DescribeAsync(OpenApiSchema schema, OpenApiSchemaTransformerContext context, CancellationToken cancellation)
    {
        var type = context.JsonTypeInfo.Type;
        if (context.JsonPropertyInfo?.AttributeProvider?.GetCustomAttributes(typeof(OneOfAttribute), false) is [OneOfAttribute list])
        {
            ChooseFrom(list, schema);
        }
        else if (type == typeof(NumberText))
        {
            schema.Type =
                JsonSchemaType.Number
                | JsonSchemaType.String
                | (context.JsonPropertyInfo is { IsGetNullable: true } ? JsonSchemaType.Null : 0);
        }
        else if (type == typeof(DateTimeOffset) || type == typeof(DateTimeOffset?))
        {
            schema.Type = type == typeof(DateTimeOffset) ? JsonSchemaType.String : JsonSchemaType.String | JsonSchemaType.Null;
            schema.Format = "date-time";
        }
        else if (type.Namespace == typeof(CertificateDocument).Namespace)
        {
            // A certificate is answered byte for byte as it was issued, and what has no value is not in it.
            foreach (var member in context.JsonTypeInfo.Properties.Where(p => p.IsGetNullable))
            {
                schema.Required?.Remove(member.Name);
            }
        }

        return Task.CompletedTask;
    }

    /// <summary>The framework makes a named schema of everything that carries a name here.</summary>
    private static void ChooseFrom(OneOfAttribute list, OpenApiSchema schema)
    {
        List<JsonNode> words = [.. list.Words.Select(w => (JsonNode)JsonValue.Create(w))];
        if (schema.Type?.HasFlag(JsonSchemaType.Null) is true)
        {
            schema.Type = null;
            schema.OneOf =
            [
                new OpenApiSchema { Type = JsonSchemaType.Null },
                new OpenApiSchema
                {
                    Type = JsonSchemaType.String,
                    Enum = words,
                    Metadata = new Dictionary<string, object> { [SchemaId] = list.Name },
                },
            ];
        }
        else
        {
            schema.Type = JsonSchemaType.String;
            schema.Enum = words;
            schema.Metadata ??= new Dictionary<string, object>();
            schema.Metadata[SchemaId] = list.Name;
        }
    }
}
