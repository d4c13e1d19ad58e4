using System.Reflection;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace Traceability.Web.Http.Description;

/// <summary>Answers that are files: of the kinds that the endpoint names, or else of the kind that its address ends in.</summary>
internal static class FileAnswers
{
    public static void Describe(OpenApiOperation operation, OpenApiOperationTransformerContext context)
    {
        var metadata = context.Description.ActionDescriptor.EndpointMetadata;
        if (
            operation.Responses?.GetValueOrDefault("200") is OpenApiResponse { Content: null or { Count: 0 } } good
            && metadata.OfType<MethodInfo>().Any(handler => Gives(handler.ReturnType))
        )
        {
            string[] named =
            [
                .. metadata
                    .OfType<IProducesResponseTypeMetadata>()
                    .Where(p => p.Type is null || p.Type == typeof(void))
                    .SelectMany(p => p.ContentTypes),
            ];
            string[] kinds =
                named.Length > 0 ? named
                : context.Description.RelativePath?.EndsWith(".pdf", StringComparison.Ordinal) is true ? ["application/pdf"]
                : ["application/octet-stream"];
            good.Content = kinds.ToDictionary(
                kind => kind,
                _ => new OpenApiMediaType
                {
                    Schema = new OpenApiSchema { Type = JsonSchemaType.String, Format = "binary" },
                }
            );
        }
    }

    private static bool Gives(Type answer) => answer == typeof(FileContentHttpResult) || answer.GetGenericArguments().Any(Gives);
}
