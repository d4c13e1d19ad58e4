using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Quality.WhereUsed;
using Traceability.Web.Features.Station.History;
using Traceability.Web.Http;

namespace Traceability.Benchmarks;

/// <summary>Something that is asked: by the service's own reader, and by an address over HTTP; with the limit of each in milliseconds.</summary>
internal sealed record ScaleQuestion(string Name, Func<WorkshopContext, Task> Ask, string Address, double DatabaseLimitMs = 50, double HttpLimitMs = 100);

/// <summary>The questions, about a lot and a unit from the middle of the filled years.</summary>
internal static class ScaleQuestions
{
    public static async Task<IReadOnlyList<ScaleQuestion>> OfAsync(WorkshopContext db)
    {
        var units = db.Set<Part>().Where(p => p.Kind == PartKinds.Unit);
        var serial = await units.OrderBy(p => p.Id).Skip(await units.CountAsync() / 2).Select(p => p.Serial).FirstAsync();
        var lot = await (from c in db.Set<Containment>()
                         join l in db.Set<Lot>() on c.ItemId equals l.Id
                         join p in db.Set<Part>() on c.ContainerId equals p.Id
                         where p.Serial == serial && l.Kind == Lot.FilmKind
                         select l.Number).FirstAsync();
        var fragment = serial[^5..];
        return
        [
            new("trace of a film lot to its units, first 500", db => new FindUses(db).RunAsync(lot, null, new PageRequest(500, null), default), $"/api/v1/lots/{lot}/where-used?limit=500"),
            new("a unit's history", db => History(db).RunAsync(serial, null, default), $"/api/v1/parts/{serial}/history"),
            new("a unit's page", db => History(db).RunAsync(serial, null, default), $"/parts/{serial}"),
            new("search by five characters of a serial", db => new SearchQuery(db).RunAsync(fragment, default), $"/api/v1/search?q={fragment}"),
            new("search by two characters", db => new SearchQuery(db).RunAsync("U2", default), "/search?q=U2"),
        ];
    }

    private static PartHistory History(WorkshopContext db) => new(new DossierReader(db, Routes), new ElsewhereQuery(db), new NameQuery(db));

    private static readonly RouteShelf Routes = new();
}
