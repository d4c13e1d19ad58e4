using System.Security.Claims;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Options;
using Traceability.Domain.Gates;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Http;

/// <summary>
/// Knows people by the token of their session: as a bearer token, or as the cookie of a page. The database keeps only the token's
/// SHA-256, so any instance can check it and nobody can read it back.
/// </summary>
public sealed class SessionAuthentication(
    IOptionsMonitor<AuthenticationSchemeOptions> options,
    ILoggerFactory logger,
    UrlEncoder encoder,
    TimeProvider clock
) : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    public const string SchemeName = "session";
    public const string Cookie = "workshop-session";

    /// <summary>Marks a principal that came by cookie: its writes need the antiforgery token.</summary>
    public const string ByCookie = "by-cookie";

    /// <summary>What the token of an instrument begins with, so that it is looked for among those.</summary>
    public const string InstrumentPrefix = "instrument-";

    /// <summary>Marks a principal that came by an instrument's token.</summary>
    public const string ByInstrument = "by-instrument";

    private const string ActorItem = "actor",
        CallerItem = "caller",
        SingleHandedItem = "single-handed",
        Bearer = "Bearer ";

    /// <summary>How long a session lasts: a working day.</summary>
    public static readonly TimeSpan Lifetime = TimeSpan.FromHours(12);

    /// <summary>The signed-in person of a request, or null.</summary>
    public static Actor? ActorOf(HttpContext context) => context.Items[ActorItem] as Actor;

    /// <summary>Says of a request that the workshop works single-handed; before anybody is known.</summary>
    public static void WorkSingleHanded(HttpContext context) => context.Items[SingleHandedItem] = true;

    /// <summary>A person as the rules that ask for two people see them in this request.</summary>
    public static Actor AtWork(HttpContext context, Actor known) =>
        known with
        {
            SingleHanded = context.Items.ContainsKey(SingleHandedItem) ? new() : null,
        };

    /// <summary>Whose idempotency keys these are: the person's, or the instrument token's; empty for whoever is not signed in.</summary>
    public static string CallerOf(HttpContext context) => context.Items[CallerItem] as string ?? "";

    /// <summary>The token that came with the request, as a bearer token or else as a cookie.</summary>
    public static string? TokenOf(HttpRequest request) =>
        request.Headers.Authorization.ToString() is { } header && header.StartsWith(Bearer, StringComparison.OrdinalIgnoreCase)
            ? header[Bearer.Length..].Trim()
            : request.Cookies[Cookie];

    /// <summary>The SHA-256 of a token, as it is stored.</summary>
    public static string HashOf(string token) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(token)));

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        var byCookie = !Request.Headers.Authorization.ToString().StartsWith(Bearer, StringComparison.OrdinalIgnoreCase);
        if (TokenOf(Request) is not { Length: > 0 } token)
        {
            return AuthenticateResult.NoResult();
        }

        // Only now: health is asked for without a token, and before there is a database.
        var db = Context.RequestServices.GetRequiredService<WorkshopContext>();
        var byInstrument = !byCookie && token.StartsWith(InstrumentPrefix, StringComparison.Ordinal);
        var known = byInstrument
            ? await ActorQuery.OfInstrumentTokenAsync(db, HashOf(token), Context.RequestAborted)
            : await ActorQuery.OfSessionAsync(db, HashOf(token), clock.GetUtcNow(), Context.RequestAborted);
        if (known is null)
        {
            return AuthenticateResult.Fail(
                byInstrument ? "this token is not, or no longer, good" : "this session has ended; sign in again"
            );
        }

        var actor = AtWork(Context, known);
        Context.Items[ActorItem] = actor;
        Context.Items[CallerItem] = byInstrument ? HashOf(token) : actor.PersonId.ToString();
        var claims = actor.Roles.Select(r => new Claim(ClaimTypes.Role, r.ToString())).Append(new(ClaimTypes.Name, actor.Badge));
        var identity = new ClaimsIdentity(
            byCookie ? claims.Append(new(ByCookie, "yes"))
                : byInstrument ? claims.Append(new(ByInstrument, "yes"))
                : claims,
            SchemeName
        );
        return AuthenticateResult.Success(new(new(identity), SchemeName));
    }

    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        if (!Request.Path.StartsWithSegments("/api"))
        {
            Response.Redirect("/sign-in?returnTo=" + Uri.EscapeDataString(Request.Path + Request.QueryString));
            return Task.CompletedTask;
        }

        Response.Headers.WWWAuthenticate = "Bearer";
        return ProblemAnswers.Of(ProblemKinds.NotSignedIn).ExecuteAsync(Context);
    }

    protected override Task HandleForbiddenAsync(AuthenticationProperties properties)
    {
        if (PageProblems.IsPage(Context))
        {
            Response.StatusCode = 403;
            return Task.CompletedTask;
        }

        var actor = ActorOf(Context);
        var roles = string.Join(", ", actor?.Roles.Select(r => r.ToString().ToLowerInvariant()) ?? []);
        return ProblemAnswers
            .Of(ProblemKinds.NotAllowed, $"{actor?.Name} has the roles {roles}, which do not include this. Nothing was recorded.")
            .ExecuteAsync(Context);
    }
}
