using System.Security.Cryptography;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Traceability.Persistence.Model;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Station.ScanBox;

/// <summary>
/// Keeps the state of screens in the database under a cookie of their own, apart from the sign-in: it outlives a reload, a sign-out and the
/// instance of the service that answered before.
/// </summary>
public sealed class ScreenStates(WorkshopContext db, TimeProvider clock)
{
    /// <summary>The cookie that tells one screen from another; it gives no right to anything.</summary>
    public const string Cookie = "workshop-screen";

    /// <summary>The state of this screen.</summary>
    public async Task<ScreenState> ReadAsync(HttpContext http)
    {
        if (IdOf(http) is not { } id)
        {
            return ScreenState.Empty;
        }

        var kept = await db.Set<StationScreen>()
            .AsNoTracking()
            .Where(s => s.ScreenId == id)
            .Select(s => s.Session)
            .FirstOrDefaultAsync(http.RequestAborted);
        return kept is null ? ScreenState.Empty : JsonSerializer.Deserialize<ScreenState>(kept) ?? ScreenState.Empty;
    }

    /// <summary>Keeps the state; a screen without a cookie gets one.</summary>
    public async Task KeepAsync(HttpContext http, ScreenState screen)
    {
        var id = IdOf(http) ?? Place(http);
        var (session, now) = (JsonSerializer.Serialize(screen), clock.GetUtcNow());
        await db.Database.ExecuteSqlAsync(
            $"""
            insert into station_screens (screen_id, session, changed_at) values ({id}, {session}, {now})
            on conflict (screen_id) do update set session = excluded.session, changed_at = excluded.changed_at
            """,
            http.RequestAborted
        );
    }

    private static string? IdOf(HttpContext http) =>
        http.Request.Cookies[Cookie] is { Length: > 0 and < 100 } token ? SessionAuthentication.HashOf(token) : null;

    private static string Place(HttpContext http)
    {
        var token = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
        http.Response.Cookies.Append(
            Cookie,
            token,
            new()
            {
                HttpOnly = true,
                SameSite = SameSiteMode.Lax,
                Secure = http.Request.IsHttps,
                Path = "/",
                MaxAge = TimeSpan.FromDays(400),
                IsEssential = true,
            }
        );
        return SessionAuthentication.HashOf(token);
    }
}
