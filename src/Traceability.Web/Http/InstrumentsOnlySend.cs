using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Authorization.Infrastructure;
using Traceability.Domain.Records;

namespace Traceability.Web.Http;

/// <summary>Whoever comes with an instrument's token may send what the instrument measures and do nothing else, not even read.</summary>
public static class InstrumentsOnlySend
{
    /// <summary>
    /// Refuses every address that is not expressly for instruments. What is open to anybody stays open, and an address that is not there,
    /// or not with this method or this kind of content, is said to be that: such an endpoint of the framework asks for nobody.
    /// </summary>
    public static async Task RefuseOthersAsync(HttpContext context, RequestDelegate next)
    {
        if (
            context.User.HasClaim(SessionAuthentication.ByInstrument, "yes")
            && context.GetEndpoint() is { } endpoint
            && !IsOpen(endpoint)
            && !IsForInstruments(endpoint)
        )
        {
            await context.ForbidAsync();
            return;
        }

        await next(context);
    }

    private static bool IsOpen(Endpoint endpoint) =>
        endpoint.Metadata.GetMetadata<IAllowAnonymous>() is not null
        || (endpoint.Metadata.GetMetadata<IAuthorizeData>() is null && endpoint.Metadata.GetMetadata<AuthorizationPolicy>() is null);

    private static bool IsForInstruments(Endpoint endpoint) =>
        endpoint
            .Metadata.OfType<AuthorizationPolicy>()
            .SelectMany(p => p.Requirements)
            .OfType<RolesAuthorizationRequirement>()
            .Any(r => r.AllowedRoles.Contains(nameof(Role.Instrument)));
}
