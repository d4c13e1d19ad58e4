using Microsoft.EntityFrameworkCore;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Shared;

/// <summary>Reads what holds of the workshop and whether it is the demonstration, once a request.</summary>
public sealed class WorkshopNotice(WorkshopContext db, CurrentWorkshop current, WorkshopQuery query)
{
    private bool? demo;

    /// <summary>What holds, as a page says it: another instance's change of the last second may be missing.</summary>
    public async Task<WorkshopFacts> ReadAsync(CancellationToken cancellation) =>
        new(current.Revision, current.Set, await IsDemoAsync(cancellation));

    /// <summary>What holds at this moment, for what is kept for good.</summary>
    public async Task<WorkshopFacts> ReadNowAsync(CancellationToken cancellation) =>
        new(await query.LatestAsync(cancellation), current.Set, await IsDemoAsync(cancellation));

    private async Task<bool> IsDemoAsync(CancellationToken cancellation) =>
        demo ??= await db.Set<WorkshopSetting>().AnyAsync(s => s.Name == WorkshopSettings.Demonstration, cancellation);
}
