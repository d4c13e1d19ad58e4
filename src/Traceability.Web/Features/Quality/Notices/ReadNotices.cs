using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Quality.Notices;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Persistence.Queries.Analyses;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Features.Quality.FilmLots;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Notices;

/// <summary>What the quality lead should know and has not acknowledged, derived from the facts whenever it is asked for.</summary>
public sealed class ReadNotices(
    WorkshopContext db,
    WatchQuery watch,
    RouteShelf routes,
    WorkshopCalendar calendar,
    CompareFilmLots compare,
    NameQuery names,
    Writes writes
) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/quality/notices", HandleAsync)
            .For(Role.Quality)
            .Is(
                Subjects.Analyses,
                "readNotices",
                "Rules broken on watched charts and film lots that stand out, each until it is acknowledged."
            );

    /// <summary>Values from so many days make the limits.</summary>
    public const int WatchedDays = 90;

    /// <summary>A rule broken longer ago is no news.</summary>
    public const int NewsDays = 30;

    /// <summary>So many of the latest verdicts of each stage are looked at.</summary>
    public const int LatestVerdicts = 200;

    /// <summary>How many acknowledgements the page shows.</summary>
    private const int MostAcknowledgements = 50;

    private const string CountUnit = "count";

    private const string Computed =
        "Watched is every main characteristic of the routes in force (on the birth certificate, with a limit), by kind and model, that"
        + " is no count and has at least 20 values among the latest 200 verdicts of its stage in the last 90 days. Each is drawn as a"
        + " chart of "
        + "individuals (mean, sigma from the mean moving range) and looked through for Nelson's eight rules; rule 1 is a point beyond"
        + " the limits. A break by a point of the last 30 days is a notice, one per chart and "
        + "rule. Film lots: those that fail more often than the rest at a false-discovery rate of 5 % over the last 365 days. An"
        + " acknowledged notice comes back when a value that became known later breaks the rule, or "
        + "when the lot fails again. A steady process breaks rule 1 about once in 370 points by chance.";

    public static async Task<JsonOrCsv<NoticesAnswer>> HandleAsync(
        HttpContext http,
        PageRequest page,
        ReadNotices use,
        CancellationToken cancellation
    )
    {
        var answer = await use.RunAsync(null, cancellation);
        var part = page.Part(answer.Items, n => n.Key);
        return JsonOrCsv.Of(answer with { Items = part.Items, Next = part.Next }, part.Items, part.Next);
    }

    /// <summary>What stands now; the comparison of all film lots over the usual period may be handed in when it is there already.</summary>
    public async Task<NoticesAnswer> RunAsync(FilmLotAnswer? lots, CancellationToken cancellation)
    {
        var found = await FindAsync(lots, cancellation);
        return new(
            found.From,
            found.NewsFrom,
            writes.Now,
            found.Charts.Count(c => c.Chart.IsWatched),
            found.Charts.Count(c => !c.Chart.IsWatched),
            found.Lots,
            Computed,
            [.. found.Notices.Select(n => RowOf(n, found.Charts))],
            [
                .. found.Charts.Select(c => new WatchedRow(
                    c.Chart.Kind,
                    c.Chart.Model,
                    c.Chart.Stage,
                    c.Stage.Title,
                    c.Chart.Characteristic,
                    c.Characteristic.Label,
                    c.Chart.Points.Count,
                    c.Chart.IsWatched
                )),
            ],
            null
        );
    }

    /// <summary>The notice of that key, if it stands now.</summary>
    public async Task<Notice?> FindAsync(string key, CancellationToken cancellation) =>
        (await FindAsync((FilmLotAnswer?)null, cancellation)).Notices.FirstOrDefault(n => n.Key == key);

    /// <summary>The latest acknowledgements.</summary>
    public async Task<IReadOnlyList<AcknowledgementRow>> AcknowledgementsAsync(CancellationToken cancellation)
    {
        var latest = await db.Set<NoticeAcknowledgement>()
            .AsNoTracking()
            .OrderByDescending(a => a.Id)
            .Take(MostAcknowledgements)
            .ToListAsync(cancellation);
        var people = await names.PeopleAsync(latest.Select(a => a.By), cancellation);
        return [.. latest.Select(a => RowOf(a, people.GetValueOrDefault(a.By, Who.Nobody)))];
    }

    /// <summary>An acknowledgement with whose it is.</summary>
    public static AcknowledgementRow RowOf(NoticeAcknowledgement a, Who by) =>
        new(a.Key, a.Kind, a.Model, a.Stage, a.Characteristic, a.Rule, a.FilmLot, a.Points, a.Note, a.OccurredAt, by);

    private async Task<Found> FindAsync(FilmLotAnswer? lots, CancellationToken cancellation)
    {
        var now = writes.Now;
        var (from, newsFrom) = (now.AddDays(-WatchedDays), now.AddDays(-NewsDays));
        var wanted = (await routes.AllInForceAsync(db, calendar.DayOf(now), cancellation))
            .SelectMany(r => r.Stages, (r, s) => (Route: r, Stage: s))
            .SelectMany(s => s.Stage.Characteristics, (s, c) => (s.Route, s.Stage, Characteristic: c))
            .Where(c => c.Characteristic.IsMain && c.Characteristic.Unit != CountUnit)
            .ToList();
        var charts = (
            await watch.ChartsAsync(wanted.Select(w => w.Stage.Code).Distinct(), from, LatestVerdicts, cancellation)
        ).ToDictionary(c => (c.Kind, c.Model, c.Stage, c.Characteristic));
        var watched = wanted.ConvertAll(w => new WatchedCharacteristic(
            charts.GetValueOrDefault((w.Route.Kind, w.Route.Model, w.Stage.Code, w.Characteristic.Name))
                ?? new(w.Route.Kind, w.Route.Model, w.Stage.Code, w.Characteristic.Name, []),
            w.Stage,
            w.Characteristic
        ));
        lots ??= (await compare.RunAsync(new AnalysisQuery(null, null, null, null), null, null, cancellation)).Answer;
        var seen = await db.Set<NoticeAcknowledgement>().AsNoTracking().ToListAsync(cancellation);
        var compared =
            lots?.Items.Select(l => new ComparedLot(l.Lot, l.Worse, l.Failed, l.Judged, l.LastFailure, l.AdjustedP)).ToList() ?? [];
        return new(
            from,
            newsFrom,
            watched,
            compared.Count(l => l.AdjustedP is not null),
            NoticeBoard.Of(watched.Select(l => l.Chart), compared, seen, newsFrom)
        );
    }

    private static NoticeRow RowOf(Notice n, IReadOnlyList<WatchedCharacteristic> charts)
    {
        var s = n.Subject;
        var at = charts.FirstOrDefault(c =>
            (c.Chart.Kind, c.Chart.Model, c.Chart.Stage, c.Chart.Characteristic) == (s.Kind, s.Model, s.Stage, s.Characteristic)
        );
        return new(
            n.Key,
            s.FilmLot is null ? "rule-break" : "film-lot",
            s.Kind,
            s.Model,
            s.Stage,
            at?.Stage.Title,
            s.Characteristic,
            at?.Characteristic.Label,
            at?.Characteristic.Unit,
            (int?)s.Rule,
            s.FilmLot,
            n.Points,
            n.Last?.Serial,
            n.Last?.Value,
            n.LastAt,
            at?.Chart.Points[0].At,
            n.Lot?.Judged,
            n.Lot?.AdjustedP
        );
    }

    private sealed record WatchedCharacteristic(WatchedChart Chart, Domain.Routes.Stage Stage, Domain.Routes.Characteristic Characteristic);

    private sealed record Found(
        DateTimeOffset From,
        DateTimeOffset NewsFrom,
        IReadOnlyList<WatchedCharacteristic> Charts,
        int Lots,
        IReadOnlyList<Notice> Notices
    );
}
