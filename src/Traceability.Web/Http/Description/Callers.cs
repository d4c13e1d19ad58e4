using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Authorization.Infrastructure;
using Microsoft.OpenApi;
using Traceability.Domain.Records;

namespace Traceability.Web.Http.Description;

/// <summary>Who may make a call: in words, and with which tokens.</summary>
internal sealed record Callers(bool Anybody, IReadOnlyList<string> Roles)
{
    private const string Session = "session";
    private const string InstrumentToken = "instrument";

    /// <summary>The tokens that the service knows.</summary>
    public static readonly IReadOnlyDictionary<string, IOpenApiSecurityScheme> Schemes = new Dictionary<string, IOpenApiSecurityScheme>
    {
        [Session] = new OpenApiSecurityScheme
        {
            Type = SecuritySchemeType.Http,
            Scheme = "bearer",
            Description = "The token of a person's session, which POST /api/v1/sessions answers; good for twelve hours.",
        },
        [InstrumentToken] = new OpenApiSecurityScheme
        {
            Type = SecuritySchemeType.Http,
            Scheme = "bearer",
            Description =
                "The token of an instrument, which POST /api/v1/instruments/{code}/tokens answers once; good until it is revoked,"
                + " and only for sending what the instrument measures.",
        },
    };

    public static Callers Of(IReadOnlyList<object> metadata)
    {
        var policies = metadata.OfType<AuthorizationPolicy>().ToList();
        return new(
            metadata.OfType<IAllowAnonymous>().Any() || (policies.Count == 0 && !metadata.OfType<IAuthorizeData>().Any()),
            [
                .. policies
                    .SelectMany(p => p.Requirements)
                    .OfType<RolesAuthorizationRequirement>()
                    .SelectMany(r => r.AllowedRoles)
                    .Select(r => r.ToLowerInvariant()),
            ]
        );
    }

    public string InWords =>
        Anybody ? "For anybody."
        : Roles.Count == 0 ? "For everybody signed in."
        : $"For: {string.Join(", ", Roles)}.";

    /// <summary>Any one of these is enough; an empty list asks for none.</summary>
    public List<OpenApiSecurityRequirement> Requirements(OpenApiDocument? document)
    {
        var instrument = nameof(Role.Instrument).ToLowerInvariant();
        string[] tokens =
            Anybody ? []
            : Roles.Count > 0 && Roles.All(r => r == instrument) ? [InstrumentToken]
            : Roles.Contains(instrument) ? [Session, InstrumentToken]
            : [Session];
        return [.. tokens.Select(t => new OpenApiSecurityRequirement { [new OpenApiSecuritySchemeReference(t, document)] = [] })];
    }
}
