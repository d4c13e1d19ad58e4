using Microsoft.AspNetCore.Http.Extensions;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Shared;

/// <summary>The way to the next page of a list, and back to its first, with the filters kept.</summary>
public sealed record Paging(string? FirstUrl, string? NextUrl)
{
    /// <summary>Makes it from the request and the cursor of the next page.</summary>
    public static Paging Of(HttpRequest request, string? next)
    {
        var kept = request.Query.Where(q => q.Key is not "cursor" && !string.IsNullOrEmpty(q.Value)).ToList();
        var first = request.Query.ContainsKey("cursor") ? request.Path + new QueryBuilder(kept).ToString() : null;
        return new(first, next is null ? null : request.Path + new QueryBuilder(kept) { { "cursor", next } }.ToString());
    }

    /// <summary>The part of a list that a page asks for.</summary>
    public static async Task<PageRequest> AskedAsync(HttpContext http) => (await PageRequest.BindAsync(http, null!))!;
}
