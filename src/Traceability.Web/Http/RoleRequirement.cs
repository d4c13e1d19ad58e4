using Traceability.Domain.Records;

namespace Traceability.Web.Http;

/// <summary>Says on an endpoint which roles may use it.</summary>
public static class RoleRequirement
{
    /// <summary>Only for people with one of these roles.</summary>
    public static TBuilder For<TBuilder>(this TBuilder endpoint, params Role[] roles)
        where TBuilder : IEndpointConventionBuilder =>
        endpoint.RequireAuthorization(policy => policy.RequireRole(roles.Select(r => r.ToString())));
}
