using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Http.Description;

/// <summary>Bodies that no signature shows: files, and one of something or a list of them.</summary>
internal static class RequestBodies
{
    /// <summary>Describes the body, where its endpoint says what it is; gives the type of a JSON body.</summary>
    public static async Task<Type?> DescribeAsync(
        OpenApiOperation operation,
        OpenApiOperationTransformerContext context,
        CancellationToken cancellation
    )
    {
        var metadata = context.Description.ActionDescriptor.EndpointMetadata;
        if (metadata.OfType<FileBody>().FirstOrDefault() is { } file)
        {
            operation.RequestBody = Required(
                file.MediaTypes.Select(m => (m, (IOpenApiSchema)new OpenApiSchema { Type = JsonSchemaType.String, Format = "binary" }))
            );
            return null;
        }

        if (metadata.OfType<OneOrManyBody>().FirstOrDefault() is { } body)
        {
            var one = await NamedSchemas.OfAsync(body.Item, context, cancellation);
            var either = new OpenApiSchema { OneOf = [one, new OpenApiSchema { Type = JsonSchemaType.Array, Items = one }] };
            operation.RequestBody = Required([("application/json", either)]);
            return body.Item;
        }

        return context.Description.ParameterDescriptions.FirstOrDefault(p => p.Source.Id == "Body")?.Type;
    }

    private static OpenApiRequestBody Required(IEnumerable<(string Media, IOpenApiSchema Schema)> content) =>
        new() { Required = true, Content = content.ToDictionary(c => c.Media, c => new OpenApiMediaType { Schema = c.Schema }) };
}
