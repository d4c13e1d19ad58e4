using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Access;

/// <summary>Ends the session that the request came with.</summary>
public sealed class SignOut : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapDelete("/sessions/current", HandleAsync)
            .Produces(StatusCodes.Status204NoContent)
            .Is(Subjects.Access, "signOut", "Sign out.");

    public static async Task<NoContent> HandleAsync(SignedIn signedIn, SessionCookie cookie, HttpContext http)
    {
        await cookie.EndAsync(http);
        return TypedResults.NoContent();
    }
}
