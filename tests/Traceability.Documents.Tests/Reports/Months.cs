using Traceability.Domain.Quality.Reports;
using Traceability.Domain.Values;

namespace Traceability.Documents.Tests.Reports;

/// Months of an invented workshop: an ordinary one, an empty one, one with everything too long and too much.
internal static class Months
{
    public const string LongName =
        "Bartholomäa-Philippine Řezáčová-Œuvrard von und zu Hohenmühle, Workshop for Condenser Microphones of the Far Valley and its"
        + " Neighbourhood";

    public const string Unbroken = "a-very-long-code-without-any-space-in-it-that-somebody-typed-at-the-bench-and-nobody-shortened";

    public static MonthlyReportDocument Ordinary { get; } = MonthlyReport.Of(MonthFacts.Ordinary());

    public static MonthlyReportDocument Empty { get; } =
        MonthlyReport.Of(
            new()
            {
                WorkshopName = "The Lower Mill Workshop",
                Month = ReportMonth.Read("2026-10", MonthFacts.At(11, 2), WorkshopCalendar.Utc).Month!,
                DrawnUpAt = MonthFacts.At(11, 2),
                Calendar = WorkshopCalendar.Utc,
            }
        );

    /// Every text as long as anybody could make it.
    public static MonthlyReportDocument LongNames { get; } =
        MonthlyReport.Of(
            MonthFacts.Ordinary() with
            {
                WorkshopName = LongName,
                InventedDataNotice = $"Invented data: {LongName} does not exist.",
                Output = [new(Unbroken, 1234, 5678, 90)],
                FailureCodes = [new(Unbroken, 12), new("stack", 3)],
                Film = MonthFacts.Cohort(($"FILM-{Unbroken}", "insulation", 400), ("F-2", null, 90), ("F-2", "soak", 9)),
                Waiting =
                [
                    new(
                        $"U-{Unbroken}",
                        LongName,
                        "unit",
                        "inspection",
                        Unbroken,
                        string.Join(' ', Enumerable.Repeat(LongName, 6)),
                        MonthFacts.At(9, 3)
                    ),
                ],
                Holds =
                [
                    .. Enumerable
                        .Range(0, 60)
                        .Select(i => new StandingHold(
                            "part",
                            $"{Unbroken}-{i:00}",
                            string.Join(' ', Enumerable.Repeat(LongName, 3)),
                            MonthFacts.At(10, 5),
                            LongName
                        )),
                ],
                Returns = [new(Unbroken, LongName, MonthFacts.At(10, 9), LongName, [LongName, Unbroken], null)],
            }
        );

    public static MonthlyReportDocument ManyLots { get; } =
        MonthlyReport.Of(
            MonthFacts.Ordinary() with
            {
                Film = MonthFacts.Cohort([
                    .. Enumerable
                        .Range(0, 120)
                        .SelectMany(i =>
                            new (string, string?, int)[] { ($"F-{i:000}", null, 9 + i % 5), ($"F-{i:000}", "insulation", i == 77 ? 40 : 1) }
                        ),
                ]),
            }
        );
}
