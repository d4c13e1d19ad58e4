using Microsoft.EntityFrameworkCore;
using Traceability.Persistence.Model;

namespace Traceability.Web.Features.Access;

/// <summary>Where a person is signed in.</summary>
public static class SessionsOf
{
    /// <summary>Ends them all, for every instance of the service, in the transaction of the command that gives the cause.</summary>
    public static Task EndAsync(WorkshopContext db, Guid personId, CancellationToken cancellation) =>
        db.Set<SignInSession>().Where(s => s.PersonId == personId).ExecuteDeleteAsync(cancellation);
}
