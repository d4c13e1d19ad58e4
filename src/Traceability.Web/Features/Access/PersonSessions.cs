using Microsoft.EntityFrameworkCore;
using Traceability.Persistence.Model;

namespace Traceability.Web.Features.Access;

/// <summary>The sessions of one person, on whatever screens.</summary>
public static class PersonSessions
{
    /// <summary>Ends them all, for every instance of the service, in the transaction of the command that gives the cause.</summary>
    public static Task EndAsync(WorkshopContext db, Guid personId, CancellationToken cancellation) =>
        db.Set<SignInSession>().Where(s => s.PersonId == personId).ExecuteDeleteAsync(cancellation);
}
