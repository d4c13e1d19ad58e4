using Traceability.Domain.Gates;
using Traceability.Domain.Quality.FilmLots;
using Traceability.Domain.Quality.Reports;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Values;

namespace Traceability.Documents.Tests.Reports;

/// <summary>The facts of an ordinary month of an invented workshop.</summary>
internal static class MonthFacts
{
    /// Diaphragms of lots that got through or failed at a stage; all that are not on their way and did not fail elsewhere have reached it.
    public static FilmCohort Cohort(params (string Lot, string? Failed, int Parts)[] film)
    {
        var stages = film.Select(f => f.Failed)
            .OfType<string>()
            .Where(f => f != OnItsWay)
            .Distinct()
            .Select(code => Stages.First(s => s.Code == code))
            .ToArray();
        return new(
            [.. film.Select(f => new LotFate(f.Lot, f.Failed == OnItsWay ? null : f.Failed, f.Failed is null, f.Parts))],
            [
                .. from f in film
                from stage in stages
                where f.Failed is null || f.Failed == stage.Code
                group f by (f.Lot, stage.Kind, stage.Code) into g
                select new LotStageCount(
                    g.Key.Lot,
                    "",
                    g.Key.Kind,
                    g.Key.Code,
                    g.Sum(f => f.Parts),
                    g.Sum(f => f.Failed is null ? 0 : f.Parts)
                ),
            ]
        );
    }

    private const string OnItsWay = "";

    public static DateTimeOffset At(int month, int day, int hour = 0) => new(2026, month, day, hour, 0, 0, TimeSpan.Zero);

    private static readonly string[] Models = ["HERON-D2", "HERON-S1"];

    private static readonly (string Kind, string Code, string Title)[] Stages =
    [
        ("diaphragm", "mount", "Mounting"),
        ("diaphragm", "ring-resonance", "Resonance on the ring"),
        ("capsule", "stack", "Stacking"),
        ("capsule", "soak", "Climate soak"),
        ("capsule", "insulation", "Insulation test"),
        ("capsule", "acoustic-test", "Acoustic test of the capsule"),
        ("board-set", "electrical", "Electrical test of the boards"),
        ("unit", "assembly", "Final assembly"),
        ("unit", "final-acoustic", "Final acoustic test"),
        ("unit", "inspection", "Final inspection"),
    ];

    public static MonthlyReportFacts Ordinary() =>
        new()
        {
            WorkshopName = "The Lower Mill Workshop",
            InventedDataNotice = "Invented data of a demonstration: these people and these numbers do not exist.",
            Month = ReportMonth.Read("2026-10", At(11, 2), WorkshopCalendar.Utc).Month!,
            DrawnUpAt = At(11, 2, 10),
            Calendar = WorkshopCalendar.Utc,
            Routes =
            [
                .. Models.SelectMany(model =>
                    Stages
                        .GroupBy(s => s.Kind)
                        .Select(kind => RouteOf(model, kind.Key, [.. kind.Select(s => new Stage(s.Code, s.Title, "entered-limits"))]))
                ),
            ],
            Output = [new("HERON-D2", 9, 8, 1), new("HERON-S1", 7, 7, 0)],
            Stages =
            [
                .. Models.SelectMany(
                    (model, m) =>
                        Stages.Select((s, i) => new StageVerdicts(model, s.Kind, s.Code, 18 - m - i / 4, 18 - m - i / 4 - Failed(i, m)))
                ),
            ],
            StagesBefore =
            [
                .. Models.SelectMany(
                    (model, m) =>
                        Stages.Select((s, i) => new StageVerdicts(model, s.Kind, s.Code, 20 - i / 3, 20 - i / 3 - (i % 4 == 1 ? 1 : 0)))
                ),
            ],
            Months =
            [
                .. Enumerable
                    .Range(0, 12)
                    .Where(i => i != 4)
                    .SelectMany(i =>
                        Stages.Select(
                            (s, j) =>
                                new MonthVerdicts(
                                    ReportMonth.CodeOf(new DateOnly(2025, 11, 1).AddMonths(i)),
                                    s.Kind,
                                    s.Code,
                                    30 + i,
                                    30 + i - (i * j % 5 == 2 ? 2 : 0)
                                )
                        )
                    ),
            ],
            Film = Cohort(
                ("F-26-031", null, 14),
                ("F-26-031", "insulation", 1),
                ("F-26-031", OnItsWay, 2),
                ("F-26-032", null, 3),
                ("F-26-032", "insulation", 8),
                ("F-26-032", "ring-resonance", 1),
                ("F-26-033", null, 6)
            ),
            FilmOfTheYear = Cohort([
                .. Enumerable
                    .Range(20, 12)
                    .SelectMany(i => new (string, string?, int)[] { ($"F-26-0{i}", null, 20), ($"F-26-0{i}", "insulation", 1) }),
                ("F-26-032", null, 3),
                ("F-26-032", "insulation", 9),
            ]),
            FailureCodes =
            [
                new("capsule/insulation", 11),
                new("capsule/acoustic-test", 4),
                new("scratched-film", 3),
                new("diaphragm/ring-resonance", 2),
                new("correction-turned-verdict", 1),
            ],
            Waiting =
            [
                new(
                    "CD-0036",
                    "HERON-D2",
                    "capsule",
                    "insulation",
                    "stage-failed",
                    "Insulation after 60 s 57 GΩ is below 100 GΩ",
                    At(10, 27, 14)
                ),
                new(
                    "BS-0038",
                    "HERON-S1",
                    "board-set",
                    "electrical",
                    "stage-failed",
                    "Supply current 5.9 mA is above 5.5 mA",
                    At(9, 30, 9)
                ),
            ],
            Holds =
            [
                new("lot", "F-26-032", "leaks after the humid soak", At(10, 23, 15), "Edda Quist"),
                .. Enumerable
                    .Range(1, 17)
                    .Select(i => new StandingHold("part", $"UD-00{i:00}", "leaks after the humid soak", At(10, 23, 15), "Edda Quist")),
                new("instrument", "CAP-02", "shows too much", At(10, 9, 8), "Edda Quist"),
            ],
            Returns =
            [
                new(
                    "UD-0014",
                    "HERON-D2",
                    At(10, 12, 10),
                    "crackles in humid air",
                    ["insulation-lost: front diaphragm 3 GΩ at 60 % humidity"],
                    "capsule replaced, certified anew"
                ),
                new("US-0015", "HERON-S1", At(10, 29, 16), "rustles on humid days", [], null),
            ],
            Series =
            [
                Series("HERON-D2", "capsule", "insulation", "Insulation after 60 s", "GOhm", 100, 1),
                Series("HERON-S1", "capsule", "acoustic-test", "Sensitivity at 1 kHz", "dB", 60, 0),
                Series("HERON-S1", "diaphragm", "ring-resonance", "Resonance on the ring", "Hz", 3, 0),
                Few(),
            ],
            Instruments =
            [
                Instrument("CAP-02", "Capacitance meter, second bench", At(8, 24), At(10, 9), passed: false),
                Instrument("MIC-01", "Reference microphone", At(3, 2), new(2027, 3, 2, 0, 0, 0, TimeSpan.Zero)),
                Instrument("CLI-01", "Climate cabinet", At(1, 20), At(10, 20)),
                Instrument("RB-01", "Resonance bench", At(5, 20), At(11, 20)),
                Instrument("INS-02", "Insulation tester, spare", null, null),
            ],
        };

    private static int Failed(int stage, int model) =>
        (stage, model) switch
        {
            (4, 0) => 9,
            (4, 1) => 3,
            (5, _) => 1,
            _ => 0,
        };

    private static Route RouteOf(string model, string kind, IReadOnlyList<Stage> stages) =>
        new(model, kind, 1, kind, "X", "Tove Marsh", "Edda Quist", new(2026, 1, 1), stages, "", "");

    private static MeasuredSeries Series(string model, string kind, string stage, string label, string unit, decimal lower, int jump) =>
        new(
            model,
            kind,
            stage,
            new(stage, label, unit, null, lower, null, null, true, true),
            [
                .. Enumerable
                    .Range(0, 40)
                    .Select(i => new SeriesPoint(
                        $"P-{i:00}",
                        At(8, 3).AddDays(2 * i),
                        140 + 12 * Math.Sin(i * 1.7) + (jump > 0 && i is 33 or 35 ? -70 : 0),
                        jump == 0 || i is not 33 and not 35
                    )),
            ],
            jump
        );

    private static MeasuredSeries Few() =>
        new(
            "HERON-D2",
            "unit",
            "inspection",
            new("faults", "Faults of the surface", "", null, null, 0, null, true, true),
            [new("U-1", At(10, 5), 0, true)],
            0
        );

    private static InstrumentStanding Instrument(
        string code,
        string title,
        DateTimeOffset? calibrated,
        DateTimeOffset? due,
        bool passed = true
    )
    {
        var instrument = new Instrument(Guid.NewGuid(), code, "meter", title, null, null, null, Guid.Empty, At(1, 1), At(1, 1));
        return new(
            instrument,
            calibrated is { } on
                ?
                [
                    new(
                        Guid.NewGuid(),
                        instrument.Id,
                        DateOnly.FromDateTime(on.DateTime),
                        DateOnly.FromDateTime(due!.Value.DateTime),
                        "CAL",
                        passed,
                        null,
                        Guid.Empty,
                        on,
                        on
                    ),
                ]
                : [],
            [],
            []
        );
    }
}
