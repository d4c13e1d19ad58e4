using Traceability.SeedScenario.Api;

namespace Traceability.SeedScenario.History;

/// <summary>Sixteen weeks of building, the week in flight, and the afterwards.</summary>
internal sealed class FourMonths
{
    private const int JigsAtOnce = 12;

    private readonly Bench bench;
    private readonly StepCounter steps;
    private readonly DiaphragmWork diaphragms;
    private readonly CapsuleWork capsules;
    private readonly UnitWork units;
    private readonly Afterwards afterwards;
    private readonly IReadOnlyList<WeekPlan> weeks = [.. Enumerable.Range(0, ScenarioCalendar.BuildingWeeks).Select(WeekPlan.Building)];
    private readonly IReadOnlyList<WeekPlan> stock = [WeekPlan.Stock(14, 65, 8, 33, 4), WeekPlan.Stock(15, 73, 8, 37, 4)];

    public FourMonths(WorkshopApi api, RouteBook routes, ScenarioCalendar calendar, IProgress<SeedProgress>? progress)
    {
        var last = new LastWeek([.. stock.SelectMany(s => s.Diaphragms)]);
        Before = last.Before();
        InFlight = last.Capsules();
        Boards = LastWeek.Boards();
        UnitsInFlight = LastWeek.Units(Before, Boards);
        DiaphragmsInFlight = LastWeek.Diaphragms();
        steps = new(progress, weeks.Concat(stock).Sum(w => w.Pieces) + Before.Count + InFlight.Count + Boards.Count + UnitsInFlight.Count + DiaphragmsInFlight.Count + Afterwards.Steps);
        bench = new(api, routes);
        diaphragms = new(bench, calendar, steps);
        capsules = new(bench, calendar, steps);
        units = new(bench, calendar, steps);
        afterwards = new(api, bench, units, calendar, steps);
    }

    private IReadOnlyList<Capsule> Before { get; }

    private IReadOnlyList<Capsule> InFlight { get; }

    private IReadOnlyList<BoardSet> Boards { get; }

    private IReadOnlyList<Unit> UnitsInFlight { get; }

    private IReadOnlyList<Diaphragm> DiaphragmsInFlight { get; }

    /// <summary>Two rows of weeks at once, each with its own jigs; what is in flight comes last, so that it keeps its jigs.</summary>
    public async Task RunAsync(CancellationToken cancellation)
    {
        await Task.WhenAll(
            RowAsync([.. weeks.Where(w => w.Week % 2 == 0), stock[0]], 1, cancellation),
            RowAsync([.. weeks.Where(w => w.Week % 2 == 1), stock[1]], 1 + JigsAtOnce, cancellation));
        await capsules.RunAsync(ScenarioCalendar.LastWeek - 1, Before, cancellation);
        await Task.WhenAll(
            diaphragms.RunAsync(ScenarioCalendar.LastWeek, DiaphragmsInFlight, 1, cancellation),
            capsules.RunAsync(ScenarioCalendar.LastWeek, InFlight, cancellation),
            units.BoardsAsync(ScenarioCalendar.LastWeek, Boards, cancellation));
        await units.RunAsync(ScenarioCalendar.LastWeek, UnitsInFlight, cancellation);
        await afterwards.RunAsync([.. weeks.SelectMany(w => w.Units)], Before[0], cancellation);
    }

    private async Task RowAsync(IReadOnlyList<WeekPlan> row, int firstJig, CancellationToken cancellation)
    {
        foreach (var week in row)
        {
            await diaphragms.RunAsync(week.Week, week.Diaphragms, firstJig, cancellation);
            await Task.WhenAll(capsules.RunAsync(week.Week, week.Capsules, cancellation), units.BoardsAsync(week.Week, week.Boards, cancellation));
            await units.RunAsync(week.Week, week.Units, cancellation);
        }
    }
}
