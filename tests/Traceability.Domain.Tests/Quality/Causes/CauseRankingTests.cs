using CsCheck;
using Traceability.Domain.Quality;
using Traceability.Domain.Quality.Causes;

namespace Traceability.Domain.Tests.Quality.Causes;

public class CauseRankingTests
{
    [Fact]
    public void The_planted_lot_comes_first_and_stands_out_alone()
    {
        CauseReport report = CauseRanking.Rank(Planted(600, parts => parts.Lot == "F-2" && parts.Index % 7 < 5)).Value;
        Assert.Equal(("film lot", "F-2"), (report.Associations[0].Factor, report.Associations[0].Level));
        Assert.Equal(["F-2"], report.Associations.Where(a => a.StandsOut()).Select(a => a.Level));
        Assert.True(report.Associations[0].Test.OddsRatioInterval.Lower > 1);
    }

    [Fact]
    public void A_level_that_the_same_parts_have_is_named_as_not_to_be_told_apart()
    {
        FactorTable table = FactorTable.FromRows(
            Enumerable
                .Range(0, 200)
                .Select(i => new FactorRow(
                    i % 4 == 0 && i % 3 != 0,
                    null,
                    new Dictionary<string, string>
                    {
                        ["film lot"] = $"F-{i % 4}",
                        ["jig"] = $"J-{i % 4}",
                        ["weekday"] = $"D-{i % 5}",
                    }
                ))
        );
        CauseAssociation first = CauseRanking.Rank(table).Value.Associations[0];
        LookAlike twin = Assert.Single(first.CannotBeToldFrom);
        Assert.Equal(("jig", "J-0", 1.0), (twin.Factor, twin.Level, Math.Round(twin.Overlap, 12)));
        Assert.True(CauseRanking.Rank(table).Value.Associations.Single(a => a is { Factor: "jig", Level: "J-0" }).IsExplainedByLeader());
    }

    [Fact]
    public void A_factor_that_goes_with_the_cause_is_explained_by_it()
    {
        // Four in five parts of the bad lot were built on Monday; Monday itself does no harm.
        FactorTable table = FactorTable.FromRows(
            Enumerable
                .Range(0, 1000)
                .Select(i =>
                {
                    bool bad = i % 10 == 0,
                        monday = bad ? i % 50 != 0 : i % 7 == 0;
                    return new FactorRow(
                        bad ? i % 20 == 0 : i % 37 == 1,
                        null,
                        new Dictionary<string, string>
                        {
                            ["film lot"] = bad ? "F-bad" : $"F-{i % 9}",
                            ["weekday"] = monday ? "Monday" : "other",
                        }
                    );
                })
        );
        IReadOnlyList<CauseAssociation> lines = CauseRanking.Rank(table).Value.Associations;
        Assert.Equal("F-bad", lines[0].Level);
        CauseAssociation monday = lines.Single(a => a.Factor == "weekday");
        Assert.True(monday is { RaisesFailures: true, AdjustedP: < 0.05 } && monday.IsExplainedByLeader() && !monday.StandsOut());
    }

    [Fact]
    public void A_factor_of_two_levels_is_one_comparison_shown_by_the_worse_level()
    {
        CauseReport report = CauseRanking.Rank([new LevelCount("station", "A", 2, 50), new LevelCount("station", "B", 9, 50)]).Value;
        Assert.Equal("B", Assert.Single(report.Associations).Level);
        Assert.Equal(report.Associations[0].Test.P, report.Associations[0].AdjustedP);
    }

    [Fact]
    public void Levels_with_too_few_parts_are_not_compared_but_counted()
    {
        CauseReport report = CauseRanking
            .Rank([new("jig", "A", 2, 50), new("jig", "B", 9, 50), new("jig", "C", 4, 4), new("jig", "D", 0, 30)])
            .Value;
        Assert.DoesNotContain(report.Associations, a => a.Level == "C");
        Assert.Equal((3, 1), (report.LevelsCompared, report.LevelsTooSmall));
    }

    [Theory]
    [InlineData(0, 50, "failed parts")]
    [InlineData(50, 50, "passed parts")]
    public void Nothing_to_compare_is_said_plainly(int failed, int total, string missing) =>
        Assert.Equal(
            missing,
            CauseRanking.Rank([new LevelCount("jig", "A", failed, total), new LevelCount("jig", "B", failed, total)]).Missing!.What
        );

    [Fact]
    public void No_parts_at_all_are_not_enough() => Assert.False(CauseRanking.Rank(FactorTable.FromRows([])).IsKnown);

    [Fact]
    public void A_single_level_cannot_be_compared() =>
        Assert.Equal("levels of one factor to compare", CauseRanking.Rank([new LevelCount("jig", "A", 3, 50)]).Missing!.What);

    [Fact]
    public void Parts_of_unknown_level_are_left_out_of_that_factor_alone()
    {
        FactorTable table = FactorTable.FromRows(
            Enumerable
                .Range(0, 40)
                .Select(i => new FactorRow(
                    i % 5 == 0,
                    null,
                    i < 10
                        ? new Dictionary<string, string> { ["jig"] = $"J-{i % 2}" }
                        : new Dictionary<string, string> { ["jig"] = $"J-{i % 2}", ["ambient"] = $"band {i % 2}" }
                ))
        );
        Assert.Equal(40, table.Count().Where(c => c.Factor == "jig").Sum(c => c.Total));
        Assert.Equal(30, table.Count().Where(c => c.Factor == "ambient").Sum(c => c.Total));
    }

    [Fact]
    public void The_order_of_the_parts_changes_nothing() =>
        Gen.Select(Gen.Bool, Gen.Int[0, 3], Gen.Int[0, 2])
            .List[0, 60]
            .Sample(rows =>
            {
                Computed<CauseReport> given = Ranked(rows),
                    reversed = Ranked([.. Enumerable.Reverse(rows)]);
                Assert.Equal(given.IsKnown, reversed.IsKnown);
                if (given.IsKnown)
                {
                    Assert.Equal(Figures(given.Value), Figures(reversed.Value));
                }

                static Computed<CauseReport> Ranked(IReadOnlyList<(bool Failed, int Lot, int Jig)> rows) =>
                    CauseRanking.Rank(
                        FactorTable.FromRows(
                            rows.Select(r => new FactorRow(
                                r.Failed,
                                null,
                                new Dictionary<string, string> { ["lot"] = $"F-{r.Lot}", ["jig"] = $"J-{r.Jig}" }
                            ))
                        )
                    );
                static IEnumerable<(string, double)> Figures(CauseReport report) =>
                    report.Associations.Select(a => ($"{a.Factor} {a.Table}", Math.Round(a.AdjustedP, 12))).Order();
            });

    [Fact]
    public void Adjusted_p_never_falls_below_p_nor_down_the_list() =>
        Gen.Select(Gen.Int[0, 20], Gen.Int[1, 40])
            .List[2, 25]
            .Sample(levels =>
            {
                Computed<CauseReport> ranked = CauseRanking.Rank([
                    .. levels.Select((l, i) => new LevelCount("jig", $"J-{i}", Math.Min(l.Item1, l.Item2), l.Item2)),
                ]);
                if (ranked.IsKnown)
                {
                    double[] adjusted = [.. ranked.Value.Associations.Select(a => a.AdjustedP)];
                    Assert.Equal(adjusted.Order(), adjusted);
                    Assert.All(
                        ranked.Value.Associations,
                        a => Assert.True(a.AdjustedP >= a.Test.P - 1e-12 && double.IsFinite(a.AdjustedP))
                    );
                }
            });

    [Fact]
    public void Counts_from_elsewhere_rank_as_the_parts_do()
    {
        FactorTable table = Planted(300, part => part.Index % 11 == 0);
        Assert.Equal(
            CauseRanking.Rank(table).Value.Associations.Select(a => (a.Factor, a.Level, a.AdjustedP)),
            CauseRanking.Rank(table.Count()).Value.Associations.Select(a => (a.Factor, a.Level, a.AdjustedP))
        );
    }

    [Fact]
    public void A_measured_circumstance_is_cut_into_bands_of_about_equal_size()
    {
        FactorColumn bands = FactorColumn.Banded("ambient", [.. Enumerable.Range(0, 100).Select(i => (double?)i), null, double.NaN]);
        Assert.Equal(["0 to below 25", "25 to below 50", "50 to below 75", "75 to 99"], bands.Levels);
        int[] codes = bands.Codes.ToArray();
        Assert.All(Enumerable.Range(0, 4), band => Assert.Equal(25, codes.Count(c => c == band)));
        Assert.Equal([FactorColumn.Unknown, FactorColumn.Unknown], codes[100..]);
    }

    private static FactorTable Planted(int parts, Func<(string Lot, int Index), bool> fails) =>
        FactorTable.FromRows(
            Enumerable
                .Range(0, parts)
                .Select(i => (Lot: $"F-{i % 6}", Index: i / 6))
                .Select(part => new FactorRow(
                    fails(part) || part.Index % 29 == 7,
                    null,
                    new Dictionary<string, string>
                    {
                        ["film lot"] = part.Lot,
                        ["jig"] = $"J-{part.Index % 4}",
                        ["builder"] = $"B-{part.Index % 3}",
                        ["weekday"] = $"D-{part.Index % 5}",
                    }
                ))
        );
}
