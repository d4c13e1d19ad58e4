using System.Globalization;
using System.Reflection;
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
    private const string Problem = "Problem";

    private const string About =
        "Facts about parts, lots and units of a workshop. Times are UTC, ISO 8601; numbers keep the digits that were sent. Every POST"
        + " takes an Idempotency-Key. "
        + "What has no value is null, and a list ends where next is null. The type of a problem is one of the addresses under /problems"
        + " that /docs lists.";

    private static readonly (int Status, string Words)[] OpenProblems = [(400, "The request is not valid.")];

    private static readonly (int Status, string Words)[] Problems =
    [
        .. OpenProblems,
        (401, "Not signed in."),
        (403, "Not for this person."),
        (404, "There is no such thing."),
        (409, "Not in this state, or a gate is closed; checks say what is missing."),
    ];

    /// <summary>Puts the description on the document.</summary>
    public static void Apply(OpenApiOptions options)
    {
        options.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
        options.AddOperationTransformer(
            async (operation, context, cancellation) =>
            {
                var open = Describe(operation, context);
                context.Document!.AddComponent<IOpenApiSchema>(
                    Problem,
                    await context.GetOrCreateSchemaAsync(typeof(ProblemDocument), null, cancellation)
                );
                AddProblems(operation, open, new OpenApiSchemaReference(Problem, context.Document));
                await AllowNullsAsync(context, cancellation);
            }
        );
        options.AddDocumentTransformer(
            (document, _, _) =>
            {
                document.Info = new()
                {
                    Title = "Traceability",
                    Version = "1",
                    Description = About,
                };
                // The framework would put in the Host that the request names, which anybody may make up.
                document.Servers = [new() { Url = "/" }];
                document.Components ??= new();
                document.Components.SecuritySchemes = new Dictionary<string, IOpenApiSecurityScheme>
                {
                    [Token] = new OpenApiSecurityScheme
                    {
                        Type = SecuritySchemeType.Http,
                        Scheme = "bearer",
                        Description = "The token of POST /api/v1/sessions.",
                    },
                };
                return Task.CompletedTask;
            }
        );
    }

    private static bool Describe(OpenApiOperation operation, OpenApiOperationTransformerContext context)
    {
        var metadata = context.Description.ActionDescriptor.EndpointMetadata;
        var policies = metadata.OfType<AuthorizationPolicy>().ToList();
        var open = metadata.OfType<IAllowAnonymous>().Any() || (policies.Count == 0 && !metadata.OfType<IAuthorizeData>().Any());
        var roles = policies
            .SelectMany(p => p.Requirements)
            .OfType<RolesAuthorizationRequirement>()
            .SelectMany(r => r.AllowedRoles)
            .Select(r => r.ToLowerInvariant())
            .ToList();
        operation.Description =
            open ? "For anybody."
            : roles.Count == 0 ? "For everybody signed in."
            : $"For: {string.Join(", ", roles)}.";
        if (!open)
        {
            operation.Security = [new OpenApiSecurityRequirement { [new OpenApiSecuritySchemeReference(Token, context.Document)] = [] }];
        }

        AddParameters(operation, context);
        return open;
    }

    /// <summary>The framework leaves out that a record or a choice inside an answer may be null.</summary>
    private static async Task AllowNullsAsync(OpenApiOperationTransformerContext context, CancellationToken cancellation)
    {
        foreach (var type in context.Description.SupportedResponseTypes.Select(r => r.Type).OfType<Type>().Where(t => t != typeof(void)))
        {
            NullableMembers.Allow(await context.GetOrCreateSchemaAsync(type, null, cancellation), type);
        }
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
            var key = new OpenApiSchema { Type = JsonSchemaType.String, MaxLength = 200 };
            operation.Parameters.Add(
                Parameter(
                    "Idempotency-Key",
                    ParameterLocation.Header,
                    key,
                    "The same key with the same body gives the same answer and writes once."
                )
            );
        }

        if (context.Description.ActionDescriptor.EndpointMetadata.OfType<MethodInfo>().Any(KnownQuery.IsPaged))
        {
            var limit = new OpenApiSchema
            {
                Type = JsonSchemaType.Integer,
                Minimum = "1",
                Maximum = "500",
            };
            operation.Parameters.Add(
                Parameter(
                    "limit",
                    ParameterLocation.Query,
                    limit,
                    "How many at most. Left out: 50, or the whole list where it is short by its nature; a table asked for as CSV"
                        + " comes whole."
                )
            );
            operation.Parameters.Add(
                Parameter("cursor", ParameterLocation.Query, new() { Type = JsonSchemaType.String }, "The 'next' of the page before.")
            );
        }
    }

    private static OpenApiParameter Parameter(string name, ParameterLocation where, OpenApiSchema schema, string words) =>
        new()
        {
            Name = name,
            In = where,
            Schema = schema,
            Description = words,
        };

    private static void AddProblems(OpenApiOperation operation, bool open, IOpenApiSchema problem)
    {
        operation.Responses ??= [];
        foreach (var (status, words) in open ? OpenProblems : Problems)
        {
            var content = new Dictionary<string, OpenApiMediaType> { [ProblemAnswers.MediaType] = new() { Schema = problem } };
            operation.Responses.TryAdd(
                status.ToString(CultureInfo.InvariantCulture),
                new OpenApiResponse { Description = words, Content = content }
            );
        }
    }
}
