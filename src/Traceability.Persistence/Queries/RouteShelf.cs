using System.Collections.Concurrent;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Routes.Files;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>
/// Approved route revisions, read once. An approved revision never changes, so holding it in memory cannot disagree with another instance;
/// which revision is approved and in force is asked of the database every time, and a proposal is never held.
/// </summary>
public sealed class RouteShelf
{
    private readonly ConcurrentDictionary<Guid, Route> routes = new();

    /// <summary>
    /// The route of that revision. A proposal that was approved here has the badge of its approver and the day of its approval.
    /// </summary>
    public async Task<Route> GetAsync(WorkshopContext db, Guid routeId, CancellationToken cancellation)
    {
        if (routes.TryGetValue(routeId, out var known))
        {
            return known;
        }

        var found = await (
            from r in db.Set<RouteRevision>()
            from a in db.Set<RouteApproval>().Where(a => a.RouteId == r.Id).DefaultIfEmpty()
            from p in db.Set<Person>().Where(p => p.Id == a.By).DefaultIfEmpty()
            where r.Id == routeId
            select new
            {
                Revision = r,
                Approval = a,
                Approver = p == null ? null : p.Badge,
            }
        )
            .AsNoTracking()
            .SingleAsync(cancellation);
        var route = Read(found.Revision);
        return found switch
        {
            { Approval: { } approval } => routes.GetOrAdd(
                routeId,
                route with
                {
                    ApprovedBy = found.Approver ?? Who.Nobody.Badge,
                    EffectiveFrom = approval.EffectiveFrom,
                }
            ),
            { Revision.ApprovedBy: "" } => route with { ApprovedBy = "" },
            _ => routes.GetOrAdd(routeId, route),
        };
    }

    /// <summary>The revision in force on a day: the highest approved one whose effective date has come. Null when there is none.</summary>
    public async Task<(Guid Id, Route Route)?> InForceAsync(
        WorkshopContext db,
        string model,
        string kind,
        DateOnly day,
        CancellationToken cancellation
    )
    {
        var found = await Begun(db, day)
            .Where(r => r.Model == model && r.Kind == kind)
            .OrderByDescending(r => r.Revision)
            .Select(r => (Guid?)r.Id)
            .FirstOrDefaultAsync(cancellation);
        return found is { } id ? (id, await GetAsync(db, id, cancellation)) : null;
    }

    /// <summary>Every revision in force on a day, by model and kind.</summary>
    public async Task<IReadOnlyList<Route>> AllInForceAsync(WorkshopContext db, DateOnly day, CancellationToken cancellation)
    {
        var begun = await Begun(db, day)
            .Select(r => new
            {
                r.Id,
                r.Model,
                r.Kind,
                r.Revision,
            })
            .ToListAsync(cancellation);
        var inForce = new List<Route>();
        foreach (var group in begun.GroupBy(r => (r.Model, r.Kind)).OrderBy(g => g.Key))
        {
            inForce.Add(await GetAsync(db, group.MaxBy(r => r.Revision)!.Id, cancellation));
        }

        return inForce;
    }

    /// <summary>The same without the routes of models that were retired or taken back: what new parts may start on.</summary>
    public async Task<IReadOnlyList<Route>> AllOfferedAsync(WorkshopContext db, DateOnly day, CancellationToken cancellation)
    {
        var setAside = await db.SetAsideAsync(SetupSort.Model, cancellation);
        return
        [
            .. (await AllInForceAsync(db, day, cancellation)).Where(r => !setAside.ContainsKey(NamedSubject.Of(SetupSort.Model, r.Model))),
        ];
    }

    /// <summary>The first day on which a route of that model and kind is in force; null when none was ever approved.</summary>
    public static async Task<DateOnly?> FirstDayAsync(WorkshopContext db, string model, string kind, CancellationToken cancellation)
    {
        var revisions = db.Set<RouteRevision>().Where(r => r.Model == model && r.Kind == kind);
        var byFile = await revisions.Where(r => r.ApprovedBy != "").MinAsync(r => (DateOnly?)r.EffectiveFrom, cancellation);
        var byApproval = await db.Set<RouteApproval>()
            .Where(a => revisions.Any(r => r.Id == a.RouteId))
            .MinAsync(a => (DateOnly?)a.EffectiveFrom, cancellation);
        return byFile < byApproval || byApproval is null ? byFile : byApproval;
    }

    /// <summary>Approved revisions whose day has come: the day of the file, or of the approval where the file is a proposal.</summary>
    private static IQueryable<RouteRevision> Begun(WorkshopContext db, DateOnly day) =>
        db.Set<RouteRevision>()
            .Where(r =>
                (r.ApprovedBy != "" && r.EffectiveFrom <= day)
                || db.Set<RouteApproval>().Any(a => a.RouteId == r.Id && a.EffectiveFrom <= day)
            );

    private static Route Read(RouteRevision revision) =>
        RouteText.ReadKept(revision.Text).Route
        ?? throw new InvalidOperationException(
            $"route {revision.Model}/{revision.Kind} revision {revision.Revision} in the database can no longer be read"
        );
}
