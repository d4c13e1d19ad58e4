using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Routes.Files;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>The kinds of lots, parts and instruments that the workshop has something of.</summary>
public sealed class KnownKindsQuery(WorkshopContext db)
{
    /// <summary>What is to be said about the kinds that a route file names, as the workshop is now.</summary>
    public async Task<IReadOnlyList<RouteWarning>> WarningsOfAsync(IReadOnlyList<NamedKind> named, CancellationToken cancellation) =>
        new KnownKinds(
            await db.Set<Lot>().Select(l => l.Kind).Distinct().ToHashSetAsync(cancellation),
            await db.Set<RouteRevision>().Select(r => r.Kind).Distinct().ToHashSetAsync(cancellation),
            await db.Set<Instrument>().Select(i => i.Kind).Distinct().ToHashSetAsync(cancellation)
        ).WarningsOf(named);
}
