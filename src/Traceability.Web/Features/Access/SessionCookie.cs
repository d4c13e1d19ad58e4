using Microsoft.EntityFrameworkCore;
using Traceability.Persistence.Model;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Access;

/// <summary>
/// The cookie by which pages know a person. The session that was there before ends, so that a shared screen holds one person.
/// </summary>
public sealed class SessionCookie(WorkshopContext db)
{
    /// <summary>Ends the session that came with the request, if any, and hands out this one.</summary>
    public async Task ReplaceAsync(HttpContext http, SignIn.Output session)
    {
        await EndAsync(http);
        http.Response.Cookies.Append(SessionAuthentication.Cookie, session.Token, Options(http, session.ExpiresAt));
    }

    /// <summary>Ends the session that came with the request for every instance of the service; a cookie is taken back.</summary>
    public async Task EndAsync(HttpContext http)
    {
        if (SessionAuthentication.TokenOf(http.Request) is { Length: > 0 } token)
        {
            var hash = SessionAuthentication.HashOf(token);
            await db.Set<SignInSession>().Where(s => s.TokenHash == hash).ExecuteDeleteAsync(http.RequestAborted);
        }

        if (http.Request.Cookies.ContainsKey(SessionAuthentication.Cookie))
        {
            http.Response.Cookies.Delete(SessionAuthentication.Cookie, Options(http, null));
        }
    }

    private static CookieOptions Options(HttpContext http, DateTimeOffset? expires) =>
        new()
        {
            HttpOnly = true,
            SameSite = SameSiteMode.Lax,
            Secure = http.Request.IsHttps,
            Path = "/",
            Expires = expires,
            IsEssential = true,
        };
}
