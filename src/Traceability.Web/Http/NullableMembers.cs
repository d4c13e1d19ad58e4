using System.Text.Json.Serialization.Metadata;
using Microsoft.OpenApi;

namespace Traceability.Web.Http;

/// <summary>
/// Says of every member of an answer that may be null that it may be. The framework says so of texts, numbers and lists, and for bodies of
/// requests; of a record or a choice inside an answer it does not.
/// </summary>
internal static class NullableMembers
{
    /// <summary>Goes through a schema together with the type that it was made of.</summary>
    public static void Allow(IOpenApiSchema? schema, Type type) => Allow(schema, JsonRules.Options.GetTypeInfo(type), []);

    private static void Allow(IOpenApiSchema? schema, JsonTypeInfo type, HashSet<IOpenApiSchema> seen)
    {
        if (schema is null || !seen.Add(schema))
        {
            return;
        }

        switch (type.Kind)
        {
            case JsonTypeInfoKind.Enumerable:
                Allow(schema.Items, JsonRules.Options.GetTypeInfo(type.ElementType!), seen);
                break;
            case JsonTypeInfoKind.Dictionary:
                Allow(schema.AdditionalProperties, JsonRules.Options.GetTypeInfo(type.ElementType!), seen);
                break;
            case JsonTypeInfoKind.Object:
                foreach (var member in type.Properties)
                {
                    if (schema.Properties?.TryGetValue(member.Name, out var inside) is true)
                    {
                        if (member.IsGetNullable && inside is OpenApiSchema own)
                        {
                            AllowNull(own);
                        }

                        Allow(
                            inside,
                            JsonRules.Options.GetTypeInfo(Nullable.GetUnderlyingType(member.PropertyType) ?? member.PropertyType),
                            seen
                        );
                    }
                }

                break;
            default:
                break;
        }
    }

    private static void AllowNull(OpenApiSchema schema)
    {
        if (schema.Type is { } type)
        {
            schema.Type = type | JsonSchemaType.Null;
        }

        if (schema.Enum is { Count: > 0 } words && !words.Any(w => w is null || w.IsJsonNullSentinel()))
        {
            words.Add(JsonNullSentinel.JsonNull);
        }
    }
}
