using CsCheck;
using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.FilmLots;
using Traceability.Domain.Routes;
using static Traceability.Domain.Tests.Sources.Nearness;

namespace Traceability.Domain.Tests.Quality.FilmLots;

public class FilmLotFailureTests
{
    private static readonly Gen<FatedFilm> AnyFilm = Gen.Select(
        Gen.Int[1, 4],
        Gen.Int[1, 2],
        Gen.Int[0, 3],
        Gen.Bool,
        Gen.Int[0, 9],
        (lot, builder, failure, passed, parts) =>
            new FatedFilm(
                $"F-{lot}",
                $"builder {builder}",
                failure switch
                {
                    2 => "insulation",
                    3 => "soak",
                    _ => null,
                },
                passed,
                parts
            )
    );

    [Fact]
    public void A_lot_is_counted_by_what_became_of_its_diaphragms()
    {
        FilmLotFailures lot = Assert.Single(
            Report(
                new("F-1", "w", null, true, 40),
                new("F-1", "w", null, false, 7),
                new("F-1", "w", "insulation", true, 3),
                new("F-1", "w", "insulation", false, 2),
                new("F-1", "w", "soak", false)
            ).Lots
        );
        Assert.Equal((53, 7, 46, 40, 3, 6), (lot.Started, lot.OnItsWay, lot.Judged, lot.PassedFirst, lot.PassedAfterRework, lot.Failed));
        Assert.Equal(new() { ["insulation"] = 5, ["soak"] = 1 }, new Dictionary<string, int>(lot.FailedByPlace));
        Assert.Equal(40.0 / 45 * 40.0 / 41, lot.Yield.Value.Value, 12);
    }

    [Fact]
    public void No_lots_give_an_empty_report() => Assert.Empty(Report().Lots);

    [Fact]
    public void A_lot_alone_has_nothing_to_be_compared_with()
    {
        FilmLotFailures lot = Assert.Single(Report(new("F-1", "w", null, true, 9), new("F-1", "w", "soak", false)).Lots);
        Assert.Equal(
            "not enough data: needs at least 1 parts outside the group to compare with, has 0",
            lot.AgainstTheRest.Missing!.ToString()
        );
        Assert.Null(lot.AdjustedP);
        Assert.False(lot.IsWorse());
    }

    [Fact]
    public void A_lot_that_reached_no_stage_has_no_yield_and_no_comparison()
    {
        FilmLotFailures lot = Report(new("F-1", "w", null, false, 5), new("F-2", "w", "soak", false), new("F-2", "w", null, true)).Lots[0];
        Assert.False(lot.Yield.IsKnown);
        Assert.False(lot.AgainstTheRest.IsKnown);
        Assert.Equal("Diaphragms started: 5; on their way without a failure so far: 5.", FilmLotSentence.Of(lot, new StageNames([])));
    }

    [Fact]
    public void Lots_without_any_failure_are_not_compared() =>
        Assert.All(
            Report(new("F-1", "w", null, true, 5), new("F-2", "w", null, true, 5)).Lots,
            lot => Assert.Equal("failed parts", lot.AgainstTheRest.Missing!.What)
        );

    [Fact]
    public void The_bad_lot_stands_out_and_the_good_ones_do_not()
    {
        var lots = Report([
            .. Enumerable
                .Range(1, 9)
                .SelectMany(i => new FatedFilm[] { new($"F-{i}", "w", null, true, 95), new($"F-{i}", "w", "soak", false, 5) }),
            new("F-bad", "w", null, true, 70),
            new("F-bad", "w", "insulation", false, 30),
        ]).Lots;
        Assert.Equal(["F-bad"], lots.Where(l => l.IsWorse()).Select(l => l.Lot));
    }

    [Fact]
    public void A_lot_that_went_to_the_busy_builder_with_many_failures_does_not_look_bad()
    {
        // Both lots fail alike at each builder (30 % and 5 %), but F-1 went mostly to the first: Fisher sees a bad lot where there is none.
        FilmLotFailures lot = Report(
            new("F-1", "builder 1", "soak", false, 60),
            new("F-1", "builder 1", null, true, 140),
            new("F-1", "builder 2", "soak", false, 2),
            new("F-1", "builder 2", null, true, 38),
            new("F-2", "builder 1", "soak", false, 12),
            new("F-2", "builder 1", null, true, 28),
            new("F-2", "builder 2", "soak", false, 10),
            new("F-2", "builder 2", null, true, 190)
        ).Lots[0];
        Assert.True(lot.AgainstTheRest.Value.P < 1e-5);
        Assert.Equal(1, lot.WithinStages.Value.CommonOddsRatio, 12);
        Assert.False(lot.IsWorse());
    }

    /// <summary>
    /// Both lots fail alike, 5 % on the ring and 30 % at insulation; half of the old lot's and a tenth of the young lot's capsules have
    /// come to insulation. Thrown together, the young lot looks far better.
    /// </summary>
    [Fact]
    public void A_lot_that_has_not_come_to_the_difficult_stage_does_not_look_good()
    {
        FilmLotFailures young = FilmLotFailureReport
            .Of(
                new(
                    [new("OLD", null, false, 400), new("YOUNG", null, false, 400)],
                    [
                        new("OLD", "", "diaphragm", "ring", 400, 20),
                        new("OLD", "", "capsule", "insulation", 200, 60),
                        new("YOUNG", "", "diaphragm", "ring", 400, 20),
                        new("YOUNG", "", "capsule", "insulation", 40, 12),
                    ]
                )
            )
            .Lots[1];
        Assert.True(young.AgainstTheRest.Value.P < 0.01);
        Assert.Equal(1, young.WithinStages.Value.CommonOddsRatio, 12);
        Assert.True(young.IsStratified && young.P > 0.9);
        Assert.Equal(0.95 * 0.7, young.Yield.Value.Value, 12);
    }

    /// <summary>
    /// The comparison of lots stage by stage against a worked example: the penicillin experiment, five doses for five stages. Source: R's
    /// help of mantelhaen.test, data set Rabbits (from memory).
    /// </summary>
    [Fact]
    public void The_comparison_by_stages_is_Mantel_and_Haenszels()
    {
        (int Cured, int Died, int CuredLater, int DiedLater)[] doses =
        [
            (0, 6, 0, 5),
            (3, 3, 0, 6),
            (6, 0, 2, 4),
            (5, 1, 6, 0),
            (2, 0, 5, 0),
        ];
        FilmLotFailures lot = FilmLotFailureReport
            .Of(
                new(
                    [new("AT-ONCE", null, true), new("LATER", null, true)],
                    [
                        .. doses.Select((d, i) => new LotStageCount("AT-ONCE", "", "capsule", $"dose-{i}", d.Cured + d.Died, d.Cured)),
                        .. doses.Select(
                            (d, i) => new LotStageCount("LATER", "", "capsule", $"dose-{i}", d.CuredLater + d.DiedLater, d.CuredLater)
                        ),
                    ]
                )
            )
            .Lots[0];
        Near(0.04747, lot.P!.Value, 1e-4);
        Near(7, lot.OddsRatio!.Value, 1e-12);
        Near(1.026713, lot.WithinStages.Value.OddsRatioInterval.Lower, 1e-6);
        Assert.Equal((3, 2), (lot.WithinStages.Value.StrataUsed, lot.WithinStages.Value.StrataWithoutComparison));
    }

    [Fact]
    public void What_came_back_from_the_field_is_compared_and_is_not_part_of_the_yield()
    {
        LotStageCount Field(string lot, int failed) => new(lot, "", "unit", FilmPath.Field, 100, failed) { IsAside = true };
        FilmLotFailureReport report = FilmLotFailureReport.Of(
            new(
                [new("F-1", null, true, 100), new("F-2", null, true, 100)],
                [new("F-1", "", "unit", "release", 100, 0), Field("F-1", 12), new("F-2", "", "unit", "release", 100, 0), Field("F-2", 0)]
            )
        );
        Assert.Equal(1, report.Lots[0].Yield.Value.Value);
        Assert.True(report.Lots[0].IsWorse());
        Assert.Contains(
            "came back of those sent out 12 of 100",
            FilmLotSentence.Of(report.Lots[0], new StageNames([])),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_deciding_p_is_the_stratified_one_when_there_are_several_strata() =>
        AnyFilm
            .List[0, 40]
            .Sample(film =>
            {
                FilmLotFailureReport report = Report([.. film]);
                Assert.All(
                    report.Lots,
                    lot =>
                        Assert.Equal(
                            lot.IsStratified ? lot.WithinStages.Value.PCorrected
                                : lot.AgainstTheRest.IsKnown ? lot.AgainstTheRest.Value.P
                                : null,
                            lot.P
                        )
                );
                Assert.All(report.Lots, lot => Assert.True(lot.AdjustedP is null || lot.AdjustedP >= lot.P));
            });

    [Fact]
    public void The_order_of_the_rows_and_their_grouping_change_nothing() =>
        AnyFilm
            .List[0, 30]
            .Sample(film =>
            {
                FatedFilm[] singly = [.. Enumerable.Reverse(film).SelectMany(f => Enumerable.Repeat(f with { Parts = 1 }, f.Parts))];
                var counted = Report([.. film]).Lots.Where(l => l.Started > 0).Select(Figures);
                Assert.Equal(counted, Report(singly).Lots.Select(Figures));

                static (string, int, int, int, double?, double?) Figures(FilmLotFailures l) =>
                    (l.Lot, l.Started, l.Failed, l.OnItsWay, Rounded(l.P), Rounded(l.AdjustedP));
                static double? Rounded(double? p) => p is { } x ? Math.Round(x, 12) : null;
            });

    [Fact]
    public void Every_diaphragm_is_counted_once() =>
        AnyFilm
            .List[0, 40]
            .Sample(film =>
                Assert.All(
                    Report([.. film]).Lots,
                    l =>
                    {
                        Assert.Equal(l.Started, l.OnItsWay + l.PassedFirst + l.Failed);
                        Assert.Equal(l.Failed, l.FailedByPlace.Values.Sum());
                    }
                )
            );

    [Fact]
    public void One_more_failure_never_makes_a_lot_look_better() =>
        Gen.Select(Gen.Int[1, 30], Gen.Int[0, 29], Gen.Int[1, 60], Gen.Int[1, 60])
            .Sample(
                (parts, failed, otherFailed, otherPassed) =>
                {
                    failed = Math.Min(failed, parts - 1);
                    FisherExactResult Compared(int k) => FisherExact.Test(new(k, parts - k, otherFailed, otherPassed)).Value;
                    FisherExactResult before = Compared(failed),
                        after = Compared(failed + 1);
                    Assert.True(after.OddsRatio >= before.OddsRatio && after.PMoreHere <= before.PMoreHere + 1e-12);
                    Assert.True(after.OddsRatioInterval.Lower >= before.OddsRatioInterval.Lower);
                }
            );

    private static FilmLotFailureReport Report(params FatedFilm[] film) => FilmLotFailureReport.Of(Cohorts.Of(film));
}
