using Traceability.Domain.Quality.Reports;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Quality.FilmLots;
using static Traceability.Domain.Tests.Quality.Reports.AMonth;

namespace Traceability.Domain.Tests.Quality.Reports;

public class MonthlyReportTests
{
    [Fact]
    public void Yields_stand_beside_those_of_the_month_before_in_the_order_of_the_route()
    {
        var yields = MonthlyReport
            .Of(
                Facts() with
                {
                    Routes = [RouteOf("capsule", "stack", "insulation"), RouteOf("diaphragm", "mount")],
                    Stages =
                    [
                        new("M", "capsule", "insulation", 20, 9),
                        new("M", "capsule", "stack", 20, 20),
                        new("M", "diaphragm", "mount", 40, 38),
                    ],
                    StagesBefore = [new("M", "capsule", "insulation", 18, 18), new("M", "diaphragm", "mount", 30, 29)],
                }
            )
            .Yields;
        var model = Assert.Single(yields.Models);
        Assert.Equal(["mount", "stack", "insulation"], model.Stages.Select(s => s.Stage));
        Assert.Equal(
            ("Titleof insulation", 9, 20, 0.45),
            (model.Stages[2].Title, model.Stages[2].Share.Passed, model.Stages[2].Share.Of, model.Stages[2].Share.Value)
        );
        Assert.Equal((67, 80), (model.FirstPass.Passed, model.FirstPass.Of));
        Assert.Equal(38.0 / 40 * 20 / 20 * 9 / 20, model.RolledThroughput.Value!.Value, 12);
        Assert.Equal((3, 2), (model.RolledThroughput.Of, model.RolledThroughputBefore.Of));
        Assert.Equal(["no clear difference", "nothing to compare with", "worse"], model.Stages.Select(s => s.Change));
        Assert.Equal("September 2026", yields.MonthBefore);
    }

    /// <summary>
    /// 11 failed of 20 against 0 of 18, by hand: all 11 among the 20, C(20,11)/C(38,11), and the one rarer table of the other side,
    /// C(18,11)/C(38,11).
    /// </summary>
    [Fact]
    public void The_comparison_with_the_month_before_is_Fishers_and_adjusted_over_all_stages()
    {
        var stages = MonthlyReport
            .Of(
                Facts() with
                {
                    Stages = [new("M", "capsule", "a", 20, 9), new("M", "capsule", "b", 20, 19)],
                    StagesBefore = [new("M", "capsule", "a", 18, 18), new("M", "capsule", "b", 18, 18)],
                }
            )
            .Yields.Models[0]
            .Stages;
        var exact = (167960.0 + 31824) / 1203322288;
        Assert.Equal(exact, stages[0].P!.Value, 8);
        Assert.Equal(2 * exact, stages[0].AdjustedP!.Value, 8);
    }

    [Fact]
    public void A_film_lot_that_fails_more_than_the_rest_stands_out_in_the_month_and_in_the_year()
    {
        FatedFilm[] fated =
        [
            new("F-1", "b", null, true, 30),
            new("F-1", "b", "soak", false, 1),
            new("F-2", "b", null, true, 4),
            new("F-2", "b", "insulation", false, 12),
            new("F-2", "b", null, false, 3),
        ];
        var film = MonthlyReport
            .Of(Facts() with { Film = Cohorts.Of(fated), FilmOfTheYear = Cohorts.Of([.. fated, new("F-0", "b", null, true, 9)]) })
            .FilmLots;
        Assert.Equal(["F-2", "F-1"], film.Lots.Select(l => l.Lot));
        Assert.Equal(
            (19, 3, 16, 12, true, "fails more often"),
            (
                film.Lots[0].Started,
                film.Lots[0].InWork,
                film.Lots[0].Judged,
                film.Lots[0].Failed,
                film.Lots[0].StandsOut,
                film.Lots[0].Against
            )
        );
        Assert.Equal((false, "fails less often"), (film.Lots[1].StandsOut, film.Lots[1].Against));
        Assert.Equal(["F-2"], film.OutstandingInTheYear.Select(l => l.Lot));
        Assert.Equal(
            "In the twelve months up to October 2026 59 diaphragms of 3 film lots were started; 1 lot stands out among them:",
            film.Year
        );
    }

    [Fact]
    public void What_waits_is_told_by_age_at_the_end_of_the_month_and_holds_of_one_decision_stand_together()
    {
        var report = MonthlyReport.Of(
            Facts() with
            {
                Waiting =
                [
                    new("C-2", "M", "capsule", "soak", "stage-failed", "late", At(10, 30)),
                    new("C-1", "M", "capsule", null, "scratch", "old", At(8, 1)),
                ],
                Holds =
                [
                    new("lot", "F-2", "leaks", At(10, 20), "Edda"),
                    .. Enumerable.Range(10, 14).Select(i => new StandingHold("part", $"D-{i}", "leaks", At(10, 20), "Edda")),
                    new("part", "D-9", "leaks", At(10, 21), "Edda"),
                ],
            }
        );
        Assert.Equal([("C-1", 92), ("C-2", 2)], report.Waiting.Lines.Select(w => (w.Serial, w.AgeDays)));
        Assert.Equal((16, 2), (report.Holds.Holds, report.Holds.Lines.Count));
        Assert.Equal(
            "1 lot, 14 parts: D-10, D-11, D-12, D-13, D-14, D-15, D-16, D-17, D-18, D-19, D-20, D-21 and 3 more",
            report.Holds.Lines[0].What
        );
    }

    [Fact]
    public void A_month_with_nothing_says_so_plainly()
    {
        var report = MonthlyReport.Of(Facts());
        Assert.StartsWith("Nothing was recorded in October 2026: no stage came to a verdict", report.Nothing, StringComparison.Ordinal);
        Assert.All(
            [
                report.Output.None,
                report.Yields.None,
                report.FilmLots.None,
                report.Failures.None,
                report.Waiting.None,
                report.Holds.None,
                report.Returns.None,
                report.Trend.None,
                report.Control.None,
                report.Instruments.None,
            ],
            none => Assert.Matches("^No", none)
        );
        Assert.Equal(12, report.Trend.Months.Count);
        Assert.All(report.Trend.Months, m => Assert.Null(m.FirstPass.Value));
    }

    [Fact]
    public void The_trend_has_twelve_months_up_to_this_one()
    {
        var trend = MonthlyReport
            .Of(
                Facts() with
                {
                    Months =
                    [
                        new("2025-11", "unit", "x", 10, 9),
                        new("2026-10", "unit", "x", 4, 4),
                        new("2026-10", "unit", "y", 4, 2),
                        new("2025-10", "unit", "x", 99, 0),
                    ],
                }
            )
            .Trend;
        Assert.Equal(("2025-11", "2026-10"), (trend.Months[0].Month, trend.Months[^1].Month));
        Assert.Equal((9, 10), (trend.Months[0].FirstPass.Passed, trend.Months[0].FirstPass.Of));
        Assert.Equal(
            (6, 8, 0.5),
            (trend.Months[^1].FirstPass.Passed, trend.Months[^1].FirstPass.Of, trend.Months[^1].RolledThroughput.Value)
        );
    }

    [Fact]
    public void The_month_that_is_not_over_speaks_up_to_now()
    {
        var now = At(10, 20, 9);
        var report = MonthlyReport.Of(
            Facts() with
            {
                Calendar = Oslo,
                DrawnUpAt = now,
                Month = ReportMonth.Read("2026-10", now, Oslo).Month!,
                Waiting = [new("C-1", "M", "capsule", null, "x", "y", At(10, 10, 9))],
            }
        );
        Assert.True(report.SoFar);
        Assert.StartsWith("October 2026 so far, as of 20 Oct 2026, 11:00", report.Period, StringComparison.Ordinal);
        Assert.Equal(10, report.Waiting.Lines[0].AgeDays);
        Assert.Contains("in October 2026 so far", report.Nothing, StringComparison.Ordinal);
    }
}
