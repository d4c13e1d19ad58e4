namespace Traceability.Web.Http;

/// <summary>Pages load nothing from elsewhere and run no inline script.</summary>
public static class SecurityHeaders
{
    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'; manifest-src 'self'";

    /// <summary>Adds the headers to every answer.</summary>
    public static Task AddAsync(HttpContext context, RequestDelegate next)
    {
        Put(context.Response.Headers);
        return next(context);
    }

    internal static void Put(IHeaderDictionary headers)
    {
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "same-origin";
        headers["X-Frame-Options"] = "DENY";
    }
}
