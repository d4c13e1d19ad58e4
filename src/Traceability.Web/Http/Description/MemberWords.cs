using System.Reflection;
using System.Text.Json.Serialization.Metadata;
using Microsoft.OpenApi;

namespace Traceability.Web.Http.Description;

/// <summary>Says of every named shape and of each of its members what it is, with one example, in the words of its doc comments.</summary>
internal static class MemberWords
{
    public static void Put(OpenApiDocument document)
    {
        foreach (var (name, schema) in document.Components?.Schemas ?? new Dictionary<string, IOpenApiSchema>())
        {
            if (schema is OpenApiSchema own && SchemaNames.TypeOf(name) is { } type)
            {
                Put(own, type);
            }
        }
    }

    private static void Put(OpenApiSchema schema, JsonTypeInfo type)
    {
        var plain = Nullable.GetUnderlyingType(type.Type) ?? type.Type;
        schema.Description = DocComments.SummaryOf(plain);
        if (plain.IsEnum)
        {
            // Where the first that refers to it may be null, the framework counts null among its words; each reference says so itself.
            schema.Type = JsonSchemaType.String;
            schema.Enum = [.. (schema.Enum ?? []).Where(w => w is not null && !w.IsJsonNullSentinel())];
        }

        // What may be null is another type to the serializer, one without members.
        foreach (var member in type.Options.GetTypeInfo(plain).Properties)
        {
            if (
                schema.Properties?.TryGetValue(member.Name, out var inside) is true
                && member.AttributeProvider is PropertyInfo { DeclaringType: { } declared } property
                && DocComments.OfMember(declared, property.Name) is { } said
            )
            {
                Put(inside, said);
            }
        }
    }

    private static void Put(IOpenApiSchema schema, DocComment said)
    {
        var example = Examples.Of(said.Example, schema);
        schema.Description = said.Words;
        switch (schema)
        {
            case OpenApiSchema own when example is not null:
                own.Examples = [example];
                break;
            case OpenApiSchemaReference reference when example is not null:
                reference.Examples = [example];
                break;
            default:
                break;
        }
    }
}
