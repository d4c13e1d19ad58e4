using System.Reflection;
using System.Text;
using Microsoft.AspNetCore.Http.Metadata;
using Traceability.Persistence.Book;

namespace Traceability.Web.Http.Answers;

/// <summary>A command was recorded: 201 with what was made, in the very text that is kept for the same Idempotency-Key.</summary>
/// <typeparam name="T">The shape of the answer, which the OpenAPI document reads from here.</typeparam>
public sealed class Recorded<T>(WrittenAnswer written) : IResult, IEndpointMetadataProvider
{
    public Task ExecuteAsync(HttpContext httpContext) => WrittenText.Of(written).ExecuteAsync(httpContext);

    static void IEndpointMetadataProvider.PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status201Created, typeof(T), ["application/json"]));
}

/// <summary>A command changed how something stands: 200 with how it stands now, in the very text that is kept.</summary>
/// <typeparam name="T">The shape of the answer.</typeparam>
public sealed class Changed<T>(WrittenAnswer written) : IResult, IEndpointMetadataProvider
{
    public Task ExecuteAsync(HttpContext httpContext) => WrittenText.Of(written).ExecuteAsync(httpContext);

    static void IEndpointMetadataProvider.PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(T), ["application/json"]));
}

internal static class WrittenText
{
    internal static IResult Of(WrittenAnswer written) => Results.Text(written.Json, "application/json", Encoding.UTF8, written.Status);
}
