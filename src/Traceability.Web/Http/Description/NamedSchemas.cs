using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace Traceability.Web.Http.Description;

/// <summary>Refers to the schema of a type that the framework does not find in a signature by itself.</summary>
internal static class NamedSchemas
{
    private const string SchemaId = "x-schema-id";

    /// <summary>A reference to the type's schema, which is put among the named ones with all that it refers to.</summary>
    public static async Task<IOpenApiSchema> OfAsync(Type type, OpenApiOperationTransformerContext context, CancellationToken cancellation)
    {
        var schema = await context.GetOrCreateSchemaAsync(type, null, cancellation);
        return Name(schema, context.Document!);
    }

    private static IOpenApiSchema Name(IOpenApiSchema schema, OpenApiDocument document)
    {
        if (schema is not OpenApiSchema own)
        {
            return schema;
        }

        if (own.Metadata?.TryGetValue(SchemaId, out var id) is true && id is string { Length: > 0 } name)
        {
            if (document.Components?.Schemas?.ContainsKey(name) is not true && document.AddComponent<IOpenApiSchema>(name, own))
            {
                NameInside(own, document);
            }

            return new OpenApiSchemaReference(name, document);
        }

        NameInside(own, document);
        return own;
    }

    private static void NameInside(OpenApiSchema schema, OpenApiDocument document)
    {
        foreach (var (member, inside) in schema.Properties?.ToList() ?? [])
        {
            schema.Properties![member] = Name(inside, document);
        }

        schema.Items = schema.Items is null ? null : Name(schema.Items, document);
        schema.AdditionalProperties = schema.AdditionalProperties is null ? null : Name(schema.AdditionalProperties, document);
        schema.OneOf = schema.OneOf is null ? null : [.. schema.OneOf.Select(s => Name(s, document))];
    }
}
