using System.Reflection;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;

namespace Traceability.Web.Http;

/// <summary>Says on an endpoint which roles may use it.</summary>
public static class Needs
{
    /// <summary>Only for people with one of these roles.</summary>
    public static TBuilder For<TBuilder>(this TBuilder endpoint, params Role[] roles)
        where TBuilder : IEndpointConventionBuilder =>
        endpoint.RequireAuthorization(policy => policy.RequireRole(roles.Select(r => r.ToString())));
}

/// <summary>The signed-in person, as an argument of a handler.</summary>
public sealed record SignedIn(Actor Actor) : IBindableFromHttpContext<SignedIn>
{
    public static ValueTask<SignedIn?> BindAsync(HttpContext context, ParameterInfo parameter) =>
        ValueTask.FromResult(SessionAuthentication.ActorOf(context) is { } actor ? new SignedIn(actor) : null);
}
