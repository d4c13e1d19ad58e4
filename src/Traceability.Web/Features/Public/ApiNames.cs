using System.Text.Json.Serialization.Metadata;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;
using Traceability.Domain.Certificates;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Public;

/// <summary>
/// Names in the interface description. Every use case has its own <c>Input</c>; without the use case's name in front they would all be
/// taken for one.
/// </summary>
internal static class ApiNames
{
    public static void Apply(OpenApiOptions options)
    {
        options.CreateSchemaReferenceId = NameOf;
        options.AddSchemaTransformer(DescribeOwnAsync);
    }

    /// <summary>
    /// What is read by rules of our own: a number may be a JSON number or a text that keeps its zeros; a time is a text with its zone.
    /// </summary>
    private static Task DescribeOwnAsync(OpenApiSchema schema, OpenApiSchemaTransformerContext context, CancellationToken cancellation)
    {
        var type = context.JsonTypeInfo.Type;
        if (type == typeof(NumberText))
        {
            schema.Type = JsonSchemaType.Number | JsonSchemaType.String;
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

    private static string? NameOf(JsonTypeInfo type) =>
        OpenApiOptions.CreateDefaultSchemaReferenceId(type) is { } name && type.Type.DeclaringType is { } useCase
            ? useCase.Name + name
            : OpenApiOptions.CreateDefaultSchemaReferenceId(type);
}
