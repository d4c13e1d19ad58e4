using System.Reflection;
using System.Text;
using Microsoft.AspNetCore.Http.Metadata;

namespace Traceability.Web.Http;

/// <summary>Lists that can be had as JSON, and as a CSV table by whoever prefers that.</summary>
public static class JsonOrCsv
{
    /// <summary>A page.</summary>
    public static JsonOrCsv<Page<T>> Of<T>(Page<T> page) => Of(page, page.Items, page.Next);

    /// <summary>An answer that says more than its list; as CSV it is the list alone.</summary>
    public static JsonOrCsv<TWhole> Of<TWhole, T>(TWhole whole, IReadOnlyList<T> items, string? next = null) =>
        new(whole, () => Csv.Of(items), next);
}

/// <summary>A list as JSON, or as a CSV table for whoever prefers that.</summary>
/// <typeparam name="T">The shape of the JSON.</typeparam>
public sealed class JsonOrCsv<T>(T whole, Func<string> rows, string? next) : IResult, IEndpointMetadataProvider
{
    public Task ExecuteAsync(HttpContext httpContext)
    {
        if (!Csv.IsWanted(httpContext))
        {
            return Results.Ok(whole).ExecuteAsync(httpContext);
        }

        if (next is not null)
        {
            httpContext.Response.Headers[Csv.NextHeader] = next;
        }

        return Results.Text(rows(), Csv.MediaType, Encoding.UTF8).ExecuteAsync(httpContext);
    }

    static void IEndpointMetadataProvider.PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(T), ["application/json", Csv.MediaType]));
}
