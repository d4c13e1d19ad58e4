using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Http.Description;

/// <summary>
/// The OpenAPI document: made, when it is asked for, from what endpoints say of themselves, from the types in their signatures and from
/// the doc comments of both.
/// </summary>
public static class ApiDocument
{
    private const string About =
        "Facts about parts, lots and units of a workshop. Times are UTC, ISO 8601; numbers keep the digits that were sent. Every POST"
        + " takes an Idempotency-Key. "
        + "What has no value is null, and a list ends where next is null. The type of a problem is one of the addresses under /problems"
        + " that /docs lists.";

    /// <summary>Puts the description on the document.</summary>
    public static void Apply(OpenApiOptions options)
    {
        options.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
        options.CreateSchemaReferenceId = SchemaNames.Of;
        options.AddSchemaTransformer(OwnSchemas.DescribeAsync);
        options.AddOperationTransformer(DescribeAsync);
        options.AddDocumentTransformer(
            (document, _, _) =>
            {
                Describe(document);
                return Task.CompletedTask;
            }
        );
    }

    private static async Task DescribeAsync(
        OpenApiOperation operation,
        OpenApiOperationTransformerContext context,
        CancellationToken cancellation
    )
    {
        IReadOnlyList<object> metadata = [.. context.Description.ActionDescriptor.EndpointMetadata];
        var callers = Callers.Of(metadata);
        operation.Description = callers.InWords;
        operation.Security = callers.Requirements(context.Document);
        Parameters.Describe(operation, context);
        FileAnswers.Describe(operation, context);
        var body = await RequestBodies.DescribeAsync(operation, context, cancellation);
        var hasPin = body?.GetProperty("Pin") is not null;
        PossibleProblems.Add(operation, metadata, hasPin, await NamedSchemas.OfAsync(typeof(ProblemDocument), context, cancellation));
    }

    private static void Describe(OpenApiDocument document)
    {
        document.Info = new()
        {
            Title = "Traceability",
            Version = "1",
            Description = About,
            License = new() { Name = "For the workshop that runs this service", Identifier = "LicenseRef-workshop" },
        };
        // The framework would put in the Host that the request names, which anybody may make up.
        document.Servers = [new() { Url = "/" }];
        document.Tags = new HashSet<OpenApiTag>(Subjects.Sentences.Select(s => new OpenApiTag { Name = s.Key, Description = s.Value }));
        document.Components ??= new();
        document.Components.SecuritySchemes = new Dictionary<string, IOpenApiSecurityScheme>(Callers.Schemes);
        // The framework's own names for a body that TakesFile describes.
        document.Components.Schemas?.Remove(nameof(Stream));
        document.Components.Schemas?.Remove(nameof(IFormFile));
        MemberWords.Put(document);
    }
}
