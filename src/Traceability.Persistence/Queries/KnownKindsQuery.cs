using Traceability.Domain.Records;
using Traceability.Domain.Routes.Files;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>The kinds of lots, parts and instruments that stand in the workshop's lists, as route files are looked at with.</summary>
public sealed class KnownKindsQuery(WorkshopContext db)
{
    /// <summary>What is to be said about the kinds that a route file names, as the workshop is now.</summary>
    public async Task<IReadOnlyList<RouteWarning>> WarningsOfAsync(IReadOnlyList<NamedKind> named, CancellationToken cancellation) =>
        new KnownKinds(
            await OfferedAsync(KindOf.Lot, cancellation),
            await OfferedAsync(KindOf.Part, cancellation),
            await OfferedAsync(KindOf.Instrument, cancellation)
        ).WarningsOf(named);

    private async Task<HashSet<string>> OfferedAsync(KindOf of, CancellationToken cancellation) =>
        [.. (await new KindsQuery(db).OfAsync(of, cancellation)).Where(k => k.Offered).Select(k => k.Code)];
}
