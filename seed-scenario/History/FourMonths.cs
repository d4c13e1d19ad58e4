using Traceability.SeedScenario.Api;

namespace Traceability.SeedScenario.History;

/// <summary>Sixteen weeks of building, the week in flight, and the afterwards.</summary>
internal sealed class FourMonths
{
    private const int JigsAtOnce = 12;

    private readonly ScenarioCalendar calendar;
    private readonly DailyChecks checks;
    private readonly DiaphragmWork diaphragms;
    private readonly CapsuleWork capsules;
    private readonly UnitWork units;
    private readonly Afterwards afterwards;
    private readonly IReadOnlyList<WeekPlan> weeks = [.. Enumerable.Range(0, ScenarioCalendar.BuildingWeeks).Select(WeekPlan.Building)];
    private readonly IReadOnlyList<Capsule> capsulesBefore;
    private readonly IReadOnlyList<Capsule> capsulesInFlight;
    private readonly IReadOnlyList<BoardSet> boardsInFlight;
    private readonly IReadOnlyList<Unit> unitsInFlight;
    private readonly IReadOnlyList<Diaphragm> diaphragmsInFlight;
    private readonly WeekPlan spares = WeekPlan.Spares();
    private readonly IReadOnlyList<WeekPlan> stock = [WeekPlan.Stock(14, 71, 4, 37, 2), WeekPlan.Stock(15, 75, 6, 39, 2)];

    public FourMonths(WorkshopApi api, RouteBook routes, ScenarioCalendar calendar, IProgress<SeedProgress>? progress)
    {
        var last = new LastWeek([.. stock.SelectMany(s => s.Diaphragms)]);
        capsulesBefore = last.Before();
        capsulesInFlight = last.Capsules();
        boardsInFlight = LastWeek.Boards();
        unitsInFlight = LastWeek.Units(capsulesBefore, boardsInFlight);
        diaphragmsInFlight = LastWeek.Diaphragms();
        this.calendar = calendar;
        var steps = new StepCounter(
            progress,
            weeks.Concat(stock).Append(spares).Sum(w => w.Pieces)
                + Afterwards.Steps
                + capsulesBefore.Count
                + capsulesInFlight.Count
                + boardsInFlight.Count
                + unitsInFlight.Count
                + diaphragmsInFlight.Count
                + calendar.EarlierInsulationDays.Count
                + calendar.RecentDays.Count
        );
        var bench = new Bench(api, routes);
        checks = new(api, steps);
        diaphragms = new(bench, calendar, steps);
        capsules = new(bench, calendar, steps);
        units = new(bench, calendar, steps);
        afterwards = new(api, bench, units, calendar, steps);
    }

    /// <summary>
    /// The tester's checks of the last days first, because whoever starts to build now may state a time on any of them. Then the spares, so
    /// that whoever starts to build meanwhile finds them before anything that is meant for a piece of this scenario. Then two rows of weeks
    /// at once, each with its own jigs; what is in flight comes last, so that it keeps its jigs.
    /// </summary>
    public async Task RunAsync(CancellationToken cancellation)
    {
        await checks.OnAsync(calendar.RecentDays, cancellation);
        await WeekAsync(spares, 1, cancellation);
        await checks.OnAsync(calendar.EarlierInsulationDays, cancellation);
        await Task.WhenAll(
            RowAsync([.. weeks.Where(w => w.Week % 2 == 0), stock[0]], 1, cancellation),
            RowAsync([.. weeks.Where(w => w.Week % 2 == 1), stock[1]], 1 + JigsAtOnce, cancellation)
        );
        await capsules.RunAsync(ScenarioCalendar.LastWeek - 1, capsulesBefore, cancellation);
        await Task.WhenAll(
            diaphragms.RunAsync(ScenarioCalendar.LastWeek, diaphragmsInFlight, 1, cancellation),
            capsules.RunAsync(ScenarioCalendar.LastWeek, capsulesInFlight, cancellation),
            units.BoardsAsync(ScenarioCalendar.LastWeek, boardsInFlight, cancellation)
        );
        await units.RunAsync(ScenarioCalendar.LastWeek, unitsInFlight, cancellation);
        await afterwards.RunAsync([.. weeks.SelectMany(w => w.Units)], capsulesBefore[0], cancellation);
    }

    private async Task RowAsync(IReadOnlyList<WeekPlan> row, int firstJig, CancellationToken cancellation)
    {
        foreach (var week in row)
        {
            await WeekAsync(week, firstJig, cancellation);
        }
    }

    private async Task WeekAsync(WeekPlan week, int firstJig, CancellationToken cancellation)
    {
        await Task.WhenAll(
            diaphragms.RunAsync(week.Week, week.Diaphragms, firstJig, cancellation),
            units.BoardsAsync(week.Week, week.Boards, cancellation)
        );
        await capsules.RunAsync(week.Week, week.Capsules, cancellation);
        await units.RunAsync(week.Week, week.Units, cancellation);
    }
}
