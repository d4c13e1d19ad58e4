using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Setup.Overview;

/// <summary>One line of the overview: how many there are, and where to go.</summary>
public sealed record SetupCount(string Key, string Url, int Number)
{
    /// <summary>
    /// True while the workshop has none. The lead alone is nobody yet: somebody else must build, and somebody else decide.
    /// </summary>
    public bool IsMissing => Number == (Key == "people" ? 1 : 0);
}

/// <summary>Counts what the workshop is made of, in the order in which it is set up.</summary>
public sealed class SetupCounts(WorkshopContext db)
{
    public async Task<IReadOnlyList<SetupCount>> ReadAsync(CancellationToken cancellation) =>
        [
            new("people", "/setup/people", await db.Offered<Person>().CountAsync(cancellation)),
            new("stations", "/setup/stations", await db.Offered<Domain.Records.Station>().CountAsync(cancellation)),
            new("instruments", "/instruments", await db.Offered<Instrument>().CountAsync(cancellation)),
            new(
                "routes",
                "/setup/routes",
                await db.Set<RouteRevision>().Select(r => new { r.Model, r.Kind }).Distinct().CountAsync(cancellation)
            ),
            new("lots", "/lots", await db.Offered<Lot>().CountAsync(cancellation)),
        ];
}
