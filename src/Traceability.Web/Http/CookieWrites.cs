using Microsoft.AspNetCore.Antiforgery;

namespace Traceability.Web.Http;

/// <summary>
/// A write that comes with the page's cookie must also carry the page's antiforgery token, so that no other site can make it.
/// </summary>
public static class CookieWrites
{
    /// <summary>Refuses API writes by cookie without the token. Razor pages look after their own forms.</summary>
    public static async Task RequireTokenAsync(HttpContext context, RequestDelegate next)
    {
        var byCookie = context.User.HasClaim(SessionAuthentication.ByCookie, "yes");
        if (
            byCookie
            && context.Request.Path.StartsWithSegments("/api")
            && !HttpMethods.IsGet(context.Request.Method)
            && !HttpMethods.IsHead(context.Request.Method)
            && !await context.RequestServices.GetRequiredService<IAntiforgery>().IsRequestValidAsync(context)
        )
        {
            await ProblemAnswers.Of(ProblemKinds.AntiforgeryTokenMissing).ExecuteAsync(context);
            return;
        }

        await next(context);
    }
}
