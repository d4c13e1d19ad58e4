using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace Traceability.Web.Http.Description;

/// <summary>What a call takes beside its body: described from the doc comments of its handler, paging and keys once for all.</summary>
internal static class Parameters
{
    private static readonly OpenApiParameter Key = Of(
        "Idempotency-Key",
        ParameterLocation.Header,
        new() { Type = JsonSchemaType.String, MaxLength = 200 },
        "The same key with the same body gives the same answer and writes once.",
        "0193a8c2-order-17"
    );

    private static readonly OpenApiParameter[] Paging =
    [
        Of(
            "limit",
            ParameterLocation.Query,
            new()
            {
                Type = JsonSchemaType.Integer,
                Minimum = "1",
                Maximum = "500",
            },
            "How many at most. Left out: 50, or the whole list where it is short by its nature; a table asked for as CSV comes whole.",
            100
        ),
        Of("cursor", ParameterLocation.Query, new() { Type = JsonSchemaType.String }, "The 'next' of the page before.", "5553303033"),
    ];

    /// <summary>Describes the call's own parameters and adds those that belong to its kind.</summary>
    public static void Describe(OpenApiOperation operation, OpenApiOperationTransformerContext context)
    {
        var handler = context.Description.ActionDescriptor.EndpointMetadata.OfType<MethodInfo>().FirstOrDefault();
        operation.Parameters ??= [];
        foreach (var parameter in operation.Parameters.OfType<OpenApiParameter>())
        {
            // Of a record that stands for several the framework takes the names as C# writes them.
            parameter.Name = JsonNamingPolicy.CamelCase.ConvertName(parameter.Name!);
            if (parameter.Schema is OpenApiSchema { Type: null, OneOf: null, Enum: null } schema)
            {
                schema.Type = JsonSchemaType.String;
            }

            if (handler is not null && WordsOf(handler, parameter.Name!) is { } said)
            {
                parameter.Description = said.Words;
                parameter.Example = Examples.Of(said.Example, parameter.Schema);
            }
        }

        if (context.Description.HttpMethod == HttpMethods.Post)
        {
            operation.Parameters.Add(Key);
        }

        if (handler is not null && KnownQuery.IsPaged(handler))
        {
            operation.Parameters.Add(Paging[0]);
            operation.Parameters.Add(Paging[1]);
        }
    }

    private static DocComment? WordsOf(MethodInfo handler, string name)
    {
        foreach (var parameter in handler.GetParameters())
        {
            if (JsonNamingPolicy.CamelCase.ConvertName(parameter.Name!) == name)
            {
                return DocComments.OfParameter(handler, parameter.Name!);
            }

            if (
                parameter.IsDefined(typeof(AsParametersAttribute))
                && parameter.ParameterType.GetProperties().FirstOrDefault(p => JsonNamingPolicy.CamelCase.ConvertName(p.Name) == name)
                    is { } member
            )
            {
                return DocComments.OfMember(parameter.ParameterType, member.Name);
            }
        }

        return null;
    }

    private static OpenApiParameter Of(string name, ParameterLocation where, OpenApiSchema schema, string words, JsonNode example) =>
        new()
        {
            Name = name,
            In = where,
            Schema = schema,
            Description = words,
            Example = example,
        };
}
