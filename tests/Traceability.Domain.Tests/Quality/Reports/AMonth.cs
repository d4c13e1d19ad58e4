using Traceability.Domain.Gates;
using Traceability.Domain.Quality.Reports;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Values;

namespace Traceability.Domain.Tests.Quality.Reports;

/// <summary>October 2026 of an invented workshop, drawn up on 2 November.</summary>
internal static class AMonth
{
    public static readonly WorkshopCalendar Oslo = new(TimeZoneInfo.FindSystemTimeZoneById("Europe/Oslo"));

    public static readonly DateTimeOffset Drawn = At(11, 2);

    public static MonthlyReportFacts Facts() =>
        new()
        {
            WorkshopName = "The Lower Mill Workshop",
            Month = ReportMonth.Read("2026-10", Drawn, WorkshopCalendar.Utc).Month!,
            DrawnUpAt = Drawn,
            Calendar = WorkshopCalendar.Utc,
        };

    public static DateTimeOffset At(int month, int day, int hour = 0) => new(2026, month, day, hour, 0, 0, TimeSpan.Zero);

    public static Route RouteOf(string kind, params string[] stages) =>
        new(
            "M",
            kind,
            1,
            kind,
            "X",
            "a",
            "b",
            new(2026, 1, 1),
            [.. stages.Select(s => new Stage(s, $"Titleof {s}", "entered-limits"))],
            "",
            ""
        );

    public static MeasuredSeries Steady(string name, int values) =>
        new(
            "M",
            "capsule",
            "stack",
            new(name, name, "pF", null, 10, null, null, true, true),
            [.. Enumerable.Range(0, values).Select(i => new SeriesPoint($"P-{i}", At(10, 1).AddHours(i), 100 + (i % 3), true))],
            0
        );

    public static MeasuredSeries Jumping() =>
        new(
            "M",
            "capsule",
            "stack",
            new("jumps", "jumps", "pF", null, 10, null, null, true, true),
            [
                .. Enumerable
                    .Range(0, 21)
                    .Select(i => new SeriesPoint($"P-{i}", At(10, 1).AddHours(i), i == 12 ? 5 : 100 + (i % 3), i != 12)),
            ],
            0
        );

    public static InstrumentStanding Registered(InstrumentStanding standing, DateTimeOffset at) =>
        standing with
        {
            Instrument = standing.Instrument with { OccurredAt = at, RecordedAt = at },
        };

    public static InstrumentStanding Instrument(string code, DateOnly? calibrated, DateOnly? due, bool passed = true)
    {
        var instrument = new Instrument(Guid.NewGuid(), code, "meter", code, null, null, null, Guid.Empty, At(1, 1), At(1, 1));
        return new(
            instrument,
            calibrated is { } on
                ? [new(Guid.NewGuid(), instrument.Id, on, due!.Value, "CAL", passed, null, Guid.Empty, At(1, 1), At(1, 1))]
                : [],
            [],
            []
        );
    }
}
