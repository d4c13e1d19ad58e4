using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>A proposed revision with what was decided about it.</summary>
public sealed record RouteProposal(RouteRevision Revision, RouteApproval? Approval, RouteEnding? Ending);

/// <summary>Finds proposals, to be decided about.</summary>
public sealed class RouteProposals(WorkshopContext db, Writes writes)
{
    /// <summary>
    /// The revision under its lock: of two who decide at once, the second finds the decision of the first. Null when there is none.
    /// </summary>
    public async Task<RouteProposal?> LockAsync(string model, string kind, int revision, CancellationToken cancellation)
    {
        if (
            await db.Set<RouteRevision>()
                .AsNoTracking()
                .FirstOrDefaultAsync(r => r.Model == model && r.Kind == kind && r.Revision == revision, cancellation)
            is not { } found
        )
        {
            return null;
        }

        await writes.Book.LockAsync(found.Id, cancellation);
        return new(
            found,
            await db.Set<RouteApproval>().AsNoTracking().FirstOrDefaultAsync(a => a.RouteId == found.Id, cancellation),
            await db.Set<RouteEnding>().AsNoTracking().FirstOrDefaultAsync(e => e.RouteId == found.Id, cancellation)
        );
    }
}
