namespace Traceability.SeedScenario.History;

/// <summary>
/// The seventeen weeks before today's week; week 0 begins on the Monday 119 days before this week's Monday, week 16 is the one before this.
/// All times are UTC, and the last of them lies before today.
/// </summary>
internal sealed class ScenarioCalendar(DateOnly today)
{
    /// <summary>Weeks in which units are built to the end.</summary>
    public const int BuildingWeeks = 16;

    /// <summary>The week that everything in flight comes from.</summary>
    public const int LastWeek = 16;

    private const int RecentDayCount = 31;

    public DateOnly Today => today;

    public DateOnly MondayOf(int week) => today.AddDays(-(((int)today.DayOfWeek + 6) % 7) - 7 * (LastWeek + 1 - week));

    /// <summary>A moment by week, day (0 = Monday) and minute of that day.</summary>
    public DateTimeOffset At(int week, int day, double minute) => Midnight(MondayOf(week).AddDays(day)).AddMinutes(minute);

    public static DateTimeOffset Midnight(DateOnly day) => new(day, TimeOnly.MinValue, TimeSpan.Zero);

    /// <summary>The last 31 days before today: whoever starts to build now may state a time on any of them.</summary>
    public IReadOnlyList<DateOnly> RecentDays { get; } = [.. Enumerable.Range(1, RecentDayCount).Select(d => today.AddDays(-d))];

    /// <summary>The days before those on which this scenario tests insulation: Wednesday to Friday.</summary>
    public IReadOnlyList<DateOnly> EarlierInsulationDays =>
        [
            .. Enumerable
                .Range(0, LastWeek + 1)
                .SelectMany(w => Enumerable.Range(2, 3).Select(d => MondayOf(w).AddDays(d)))
                .Where(d => d < today.AddDays(-RecentDayCount)),
        ];
}
