using Traceability.Domain.Quality.FilmLots;
using Traceability.Domain.Quality.Reports;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Persistence.Queries.Analyses;
using Traceability.Web.Features.Service.Returns;
using Traceability.Web.Features.Shared;

namespace Traceability.Web.Features.Quality.Reports;

/// <summary>Gathers everything that a monthly report is made from, by the same statements as the desk's analyses.</summary>
public sealed class MonthlyReportSources(
    WorkshopContext db,
    RouteShelf shelf,
    WorkshopCalendar calendar,
    WorkshopNotice notice,
    YieldQuery yields,
    FilmLotQuery film,
    ChartQuery charts,
    SeriesQuery series,
    MonthQuery month,
    InstrumentQuery instruments,
    ListReturns returns
)
{
    private const string InventedData = "Invented data of a demonstration: this workshop, these people and these numbers do not exist.";

    /// The month and the eleven before it.
    private const int MonthsBack = 11;

    /// Control charts look at the month and the two before it.
    private const int ChartedMonthsBack = 2;

    /// <summary>The facts of a month, told up to its end or up to now.</summary>
    public async Task<MonthlyReportFacts> OfAsync(ReportMonth asked, DateTimeOffset now, CancellationToken cancellation)
    {
        // What was recorded at this very moment belongs to a month told so far.
        var end = asked.SoFar ? asked.AsOf.AddTicks(TimeSpan.TicksPerMicrosecond) : asked.To;
        var filter = new AnalysisFilter(asked.From, end, null, null, calendar.Zone.Id);
        var year = filter with { From = calendar.StartOf(asked.FirstOf(MonthsBack)) };
        var workshop = await notice.ReadAsync(cancellation);
        var routes = await shelf.AllInForceAsync(db, calendar.DayOf(end.AddTicks(-1)), cancellation);
        return new()
        {
            WorkshopName = workshop.Workshop ?? "",
            InventedDataNotice = workshop.Demo ? InventedData : null,
            Month = asked,
            DrawnUpAt = now,
            Calendar = calendar,
            Routes = routes,
            Output = await month.OutputAsync(asked.From, end, cancellation),
            Stages = await StagesAsync(filter, cancellation),
            StagesBefore = await StagesAsync(filter with { From = calendar.StartOf(asked.FirstOf(1)), To = asked.From }, cancellation),
            Months =
            [
                .. (await yields.RunAsync(year, "month", cancellation)).Select(y => new MonthVerdicts(
                    y.Group,
                    y.Kind,
                    y.Stage,
                    y.Judged,
                    y.PassedFirst
                )),
            ],
            Film = FilmCohort.Of(await film.CountAsync(filter, Stratum.Builder, cancellation), null),
            FilmOfTheYear = FilmCohort.Of(await film.CountAsync(year, Stratum.Builder, cancellation), null),
            FailureCodes = [.. (await charts.CodesAsync(filter, cancellation)).Select(c => KeyValuePair.Create(c.Code, c.Count))],
            Waiting =
            [
                .. (await month.WaitingAsync(end, cancellation)).Select(w =>
                    w with
                    {
                        Description = Domain.Routes.PlainWords.Of(RouteOf(routes, w), w.Stage, w.Description),
                    }
                ),
            ],
            Holds = await month.HoldsAsync(end, cancellation),
            Returns = [.. (await returns.ReceivedAsync(asked.From, end, cancellation)).Select(Of)],
            Series = await SeriesAsync(routes, filter with { From = calendar.StartOf(asked.FirstOf(ChartedMonthsBack)) }, cancellation),
            Instruments = await instruments.FindAsync(null, cancellation),
            InstrumentsUsed = await month.InstrumentsUsedAsync(end, cancellation),
        };
    }

    private static Domain.Routes.Route? RouteOf(IReadOnlyList<Domain.Routes.Route> routes, WaitingNonconformity waiting) =>
        routes.FirstOrDefault(r => r.Model == waiting.Model && r.Kind == waiting.Kind);

    private static ReturnedInMonth Of(ReturnRow r) =>
        new(r.Serial, r.Model, r.ReturnedAt, r.Complaint, [.. r.Findings.Select(f => $"{f.Code}: {f.Description}")], r.Action);

    private async Task<IReadOnlyList<StageVerdicts>> StagesAsync(AnalysisFilter filter, CancellationToken cancellation) =>
        [
            .. (await yields.RunAsync(filter, "model", cancellation)).Select(y => new StageVerdicts(
                y.Group,
                y.Kind,
                y.Stage,
                y.Judged,
                y.PassedFirst
            )),
        ];

    private async Task<IReadOnlyList<MeasuredSeries>> SeriesAsync(
        IReadOnlyList<Domain.Routes.Route> routes,
        AnalysisFilter filter,
        CancellationToken cancellation
    )
    {
        var asked = (
            from route in routes
            where route.Kind != PartKinds.FilmLot
            from stage in route.Stages
            from c in stage.Characteristics
            where c.IsMain
            select (Of: new SeriesAsked(route.Model, stage.Code, c.Name), route.Kind, Characteristic: c)
        )
            .DistinctBy(a => a.Of)
            .ToList();
        var values = await series.ValuesAsync(filter.From, filter.To, asked.ConvertAll(a => a.Of), cancellation);
        return asked.ConvertAll(a => new MeasuredSeries(
            a.Of.Model,
            a.Kind,
            a.Of.Stage,
            a.Characteristic,
            [.. values[a.Of].Where(v => !v.IsBound).Select(v => new SeriesPoint(v.Serial, v.At, v.Value, v.Met))],
            values[a.Of].Count(v => v.IsBound)
        ));
    }
}
