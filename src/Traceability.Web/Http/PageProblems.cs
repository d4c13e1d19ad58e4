using System.Text.Encodings.Web;
using Microsoft.Extensions.Localization;

namespace Traceability.Web.Http;

/// <summary>Problems as pages, for people; programs get problem documents.</summary>
public static class PageProblems
{
    /// <summary>True when a browser asked for a page.</summary>
    public static bool IsPage(HttpContext context)
    {
        var path = context.Request.Path;
        return !path.StartsWithSegments(Addresses.Api)
            && !path.StartsWithSegments(Addresses.Health)
            && !path.StartsWithSegments(Addresses.Description)
            && context.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>A page for a failure of ours. It asks nothing of the database and needs no layout: either may be what failed.</summary>
    public static Task WriteBareAsync(HttpContext context, int status)
    {
        var texts = context.RequestServices.GetRequiredService<IStringLocalizer<PageProblemTexts>>();
        var known =
            status == 503 ? 503
            : status is 400 or 413 or 429 ? status
            : 500;
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/html; charset=utf-8";
        SecurityHeaders.Put(context.Response.Headers);
        return context.Response.WriteAsync(
            $"""
            <!DOCTYPE html>
            <html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>{Text(
                $"{known}.Title"
            )}</title><link rel="stylesheet" href="/site.css"></head>
            <body><main><h1>{Text($"{known}.Title")}</h1><p>{Text($"{known}.Text")}</p><p><a href="/">{Text(
                "Home"
            )}</a></p><p class="soft small">{HtmlEncoder.Default.Encode(
                texts["Request", context.TraceIdentifier]
            )}</p></main></body></html>
            """
        );

        string Text(string key) => HtmlEncoder.Default.Encode(texts[key]);
    }
}
