using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Authorization.Infrastructure;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace Traceability.Web.Http;

/// <summary>
/// What the OpenAPI document says beyond the shapes that it takes from the code: what each call does, who may, paging, keys, problems.
/// </summary>
public static class ApiDescription
{
    private const string Token = "session";
    private const string Problem = "application/problem+json";

    /// <summary>Puts the description on the document.</summary>
    public static void Apply(OpenApiOptions options)
    {
        options.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
        options.AddOperationTransformer((operation, context, _) =>
        {
            Describe(operation, context);
            return Task.CompletedTask;
        });
        options.AddDocumentTransformer((document, _, _) =>
        {
            document.Info = new() { Title = "Traceability", Version = "1", Description = "Facts about parts, lots and units of a workshop. Times are UTC, ISO 8601; numbers keep the digits that were sent. Every POST takes an Idempotency-Key." };
            document.Components ??= new();
            document.Components.SecuritySchemes = new Dictionary<string, IOpenApiSecurityScheme> { [Token] = new OpenApiSecurityScheme { Type = SecuritySchemeType.Http, Scheme = "bearer", Description = "The token of POST /api/v1/sessions." } };
            return Task.CompletedTask;
        });
    }

    private static void Describe(OpenApiOperation operation, OpenApiOperationTransformerContext context)
    {
        var metadata = context.Description.ActionDescriptor.EndpointMetadata;
        var key = $"{context.Description.HttpMethod} /{context.Description.RelativePath}";
        operation.Summary = ApiWords.Of(key) ?? operation.Summary;
        operation.Tags = null;
        var open = metadata.OfType<IAllowAnonymous>().Any() || !metadata.OfType<IAuthorizeData>().Any() && !metadata.OfType<AuthorizationPolicy>().Any();
        var roles = metadata.OfType<AuthorizationPolicy>().SelectMany(p => p.Requirements).OfType<RolesAuthorizationRequirement>().SelectMany(r => r.AllowedRoles).ToList();
        operation.Description = open ? "For anybody." : roles.Count == 0 ? "For everybody signed in." : $"For: {string.Join(", ", roles.Select(r => r.ToLowerInvariant()))}.";
        if (!open)
        {
            operation.Security = [new OpenApiSecurityRequirement { [new OpenApiSecuritySchemeReference(Token, context.Document)] = [] }];
        }

        AddParameters(operation, context);
        AddProblems(operation, open);
    }

    private static void AddParameters(OpenApiOperation operation, OpenApiOperationTransformerContext context)
    {
        operation.Parameters ??= [];
        foreach (var parameter in operation.Parameters.OfType<OpenApiParameter>())
        {
            if (parameter.Schema is OpenApiSchema { Type: null } schema)
            {
                schema.Type = JsonSchemaType.String;
            }
        }

        if (context.Description.HttpMethod == HttpMethods.Post)
        {
            operation.Parameters.Add(new OpenApiParameter { Name = "Idempotency-Key", In = ParameterLocation.Header, Schema = new OpenApiSchema { Type = JsonSchemaType.String, MaxLength = 200 }, Description = "The same key with the same body gives the same answer and writes once." });
        }

        if (ApiWords.IsPaged($"/{context.Description.RelativePath}") && context.Description.HttpMethod == HttpMethods.Get)
        {
            operation.Parameters.Add(new OpenApiParameter { Name = "limit", In = ParameterLocation.Query, Schema = new OpenApiSchema { Type = JsonSchemaType.Integer, Minimum = "1", Maximum = "500", Default = JsonValue.Create(50) } });
            operation.Parameters.Add(new OpenApiParameter { Name = "cursor", In = ParameterLocation.Query, Schema = new OpenApiSchema { Type = JsonSchemaType.String }, Description = "The 'next' of the page before." });
        }
    }

    private static void AddProblems(OpenApiOperation operation, bool open)
    {
        operation.Responses ??= [];
        (int Status, string Words)[] problems = open
            ? [(400, "The request is not valid.")]
            : [(400, "The request is not valid."), (401, "Not signed in."), (403, "Not for this person."), (404, "There is no such thing."), (409, "Not in this state, or a gate is closed; checks say what is missing.")];
        foreach (var (status, words) in problems)
        {
            operation.Responses.TryAdd(status.ToString(CultureInfo.InvariantCulture), new OpenApiResponse { Description = words, Content = new Dictionary<string, OpenApiMediaType> { [Problem] = new() } });
        }
    }
}
