namespace Traceability.Web.Http;

/// <summary>Pages load nothing from elsewhere and run no inline script; answers of the API are kept by nobody.</summary>
public static class SecurityHeaders
{
    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; font-src 'self'; connect-src 'self';"
        + " form-action 'self'; frame-ancestors 'none'; base-uri 'none'; manifest-src 'self'";

    /// <summary>Adds the headers to every answer.</summary>
    public static Task AddAsync(HttpContext context, RequestDelegate next)
    {
        Put(context.Response.Headers);
        if (Keeping(context.Request.Path) is { } keeping)
        {
            context.Response.Headers.CacheControl = keeping;
        }

        return next(context);
    }

    /// <summary>
    /// Answers of the API are for whoever asked and of the moment: nobody in between keeps them. What is public may be kept, but is asked
    /// for anew.
    /// </summary>
    private static string? Keeping(PathString path) =>
        path.StartsWithSegments("/api/v1/verify") || path.StartsWithSegments(Addresses.Description) ? "no-cache"
        : path.StartsWithSegments(Addresses.Api) || path.StartsWithSegments(Addresses.Health) ? "no-store"
        : null;

    internal static void Put(IHeaderDictionary headers)
    {
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "same-origin";
        headers["X-Frame-Options"] = "DENY";
    }
}
