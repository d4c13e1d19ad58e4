using System.Reflection;
using Traceability.Domain.Gates;

namespace Traceability.Web.Http;

/// <summary>The signed-in person, as an argument of a handler.</summary>
public sealed record SignedIn(Actor Actor) : IBindableFromHttpContext<SignedIn>
{
    public static ValueTask<SignedIn?> BindAsync(HttpContext context, ParameterInfo parameter) =>
        ValueTask.FromResult(SessionAuthentication.ActorOf(context) is { } actor ? new SignedIn(actor) : null);
}
