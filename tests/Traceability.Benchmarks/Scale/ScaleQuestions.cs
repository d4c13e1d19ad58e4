using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Persistence.Queries.Analyses;
using Traceability.Web.Features.Parts.History;
using Traceability.Web.Features.Quality.WhereUsed;
using Traceability.Web.Http;

namespace Traceability.Benchmarks;

/// <summary>
/// Something that is asked: by the service's own reader (null: only as a page, which asks many), and by an address over HTTP; with the
/// limit of each in milliseconds. The limits are those of the project's issue for the first questions, our own for the later ones.
/// </summary>
internal sealed record ScaleQuestion(
    string Name,
    Func<WorkshopContext, Task>? Ask,
    string Address,
    double DatabaseLimitMs = 50,
    double HttpLimitMs = 100
);

/// <summary>The questions, about a lot and a unit from the middle of the filled years.</summary>
internal static class ScaleQuestions
{
    public static async Task<IReadOnlyList<ScaleQuestion>> OfAsync(WorkshopContext db)
    {
        var units = db.Set<Part>().Where(p => p.Kind == PartKinds.Unit);
        var serial = await units.OrderBy(p => p.Id).Skip(await units.CountAsync() / 2).Select(p => p.Serial).FirstAsync();
        var lot = await (
            from c in db.Set<Containment>()
            join l in db.Set<Lot>() on c.ItemId equals l.Id
            join p in db.Set<Part>() on c.ContainerId equals p.Id
            where p.Serial == serial && l.Kind == Lot.FilmKind
            select l.Number
        ).FirstAsync();
        var fragment = serial[^5..];
        var made = await db.Set<Part>().Where(p => p.Serial == serial).Select(p => p.OccurredAt).SingleAsync();
        var quarter = new AnalysisFilter(made.AddDays(-45), made.AddDays(46), null, null, "UTC");
        var ever = quarter with { From = FilledWorkshop.Opened.AddDays(-1), To = FilledWorkshop.Closed.AddDays(30) };
        var period = $"from={quarter.From.UtcDateTime:yyyy-MM-dd}&to={quarter.To.UtcDateTime:yyyy-MM-dd}";
        return
        [
            new(
                "trace of a film lot to its units, first 500",
                db =>
                    new FindUses(db, new(new(db, new(db, Routes)), WorkshopCalendar.Utc, TimeProvider.System)).RunAsync(
                        lot,
                        null,
                        new PageRequest(500, null),
                        default
                    ),
                $"/api/v1/lots/{lot}/where-used?limit=500"
            ),
            new("the same with where each part is now", null, $"/api/v1/quality/trace?what=lot&code={lot}&limit=500", 0, 100),
            new("a unit's history", db => History(db).RunAsync(serial, null, default), $"/api/v1/parts/{serial}/history"),
            new("a unit's page", db => History(db).RunAsync(serial, null, default), $"/parts/{serial}"),
            new(
                "search by five characters of a serial",
                db => new SearchQuery(db).RunAsync(fragment, default),
                $"/api/v1/search?q={fragment}"
            ),
            new("failures by film lot, a quarter", db => FilmLotsAsync(db, quarter), $"/api/v1/quality/film-lots?{period}"),
            new("the page of failures by film lot, a quarter", db => FilmLotsAsync(db, quarter), $"/quality/film-lots?{period}"),
            new(
                "causes of insulation failures, a quarter",
                db => new CauseQuery(db).RunAsync(quarter with { Stage = "insulation" }, new("insulation", null, null), default),
                $"/api/v1/quality/causes?stage=insulation&{period}",
                1000,
                1000
            ),
            new(
                "every resonance on the ring there is, on one chart",
                db =>
                    new ChartQuery(db).PointsAsync(ever with { Stage = "ring-resonance" }, "ringResonanceHz", loads: false, null, default),
                $"/api/v1/quality/control-chart?stage=ring-resonance&characteristic=ringResonanceHz"
                    + $"&from={ever.From.UtcDateTime:yyyy-MM-dd}",
                5000,
                5000
            ),
            new(
                "failures by film lot at one stage, a quarter",
                db => FilmLotsAsync(db, quarter),
                $"/api/v1/quality/film-lots?stage=insulation&{period}"
            ),
            new("the quality lead's desk, a quarter", null, $"/quality?{period}", 0, 2000),
            new("the monthly report", null, $"/api/v1/quality/monthly-report.json?month={made:yyyy-MM}", 0, 5000),
            new("routes, with the parts on each", null, "/setup/routes", 0, 2000),
            new("search by two characters", db => new SearchQuery(db).RunAsync("U2", default), "/search?q=U2"),
        ];
    }

    /// <summary>The statements behind the table of film lots.</summary>
    private static Task FilmLotsAsync(WorkshopContext db, AnalysisFilter filter) =>
        new FilmLotQuery(db, new(db)).CountAsync(filter, Stratum.Builder, default);

    private static ReadHistory History(WorkshopContext db) => new(new DossierReader(db, Routes), new ElsewhereQuery(db), new NameQuery(db));

    private static readonly RouteShelf Routes = new();
}
