using System.Collections.Concurrent;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Routes.Files;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>
/// Route revisions, read once. A revision never changes, so holding it in memory cannot disagree with another instance;
/// which revision is in force is asked of the database every time.
/// </summary>
public sealed class RouteShelf
{
    private readonly ConcurrentDictionary<Guid, Route> routes = new();

    /// <summary>The route of that revision.</summary>
    public async Task<Route> GetAsync(WorkshopContext db, Guid routeId, CancellationToken cancellation) =>
        routes.TryGetValue(routeId, out var known) ? known : Keep(await db.Set<RouteRevision>().AsNoTracking().SingleAsync(r => r.Id == routeId, cancellation));

    /// <summary>The revision in force on a day: the highest whose effective date has come. Null when there is none.</summary>
    public async Task<(Guid Id, Route Route)?> InForceAsync(WorkshopContext db, string model, string kind, DateOnly day, CancellationToken cancellation)
    {
        var found = await db.Set<RouteRevision>().AsNoTracking()
            .Where(r => r.Model == model && r.Kind == kind && r.EffectiveFrom <= day)
            .OrderByDescending(r => r.Revision).FirstOrDefaultAsync(cancellation);
        return found is null ? null : (found.Id, Keep(found));
    }

    /// <summary>Every revision in force on a day, by model and kind.</summary>
    public async Task<IReadOnlyList<Route>> AllInForceAsync(WorkshopContext db, DateOnly day, CancellationToken cancellation)
    {
        var all = await db.Set<RouteRevision>().AsNoTracking().Where(r => r.EffectiveFrom <= day).ToListAsync(cancellation);
        return [.. all.GroupBy(r => (r.Model, r.Kind)).OrderBy(g => g.Key).Select(g => Keep(g.MaxBy(r => r.Revision)!))];
    }

    private Route Keep(RouteRevision revision) => routes.GetOrAdd(revision.Id, _ =>
        RouteText.ReadKept(revision.Text).Route ?? throw new InvalidOperationException($"route {revision.Model}/{revision.Kind} revision {revision.Revision} in the database can no longer be read"));
}
