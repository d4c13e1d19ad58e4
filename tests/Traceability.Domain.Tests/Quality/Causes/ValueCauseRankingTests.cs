using CsCheck;
using Traceability.Domain.Quality;
using Traceability.Domain.Quality.Causes;
using Traceability.Domain.Quality.Comparisons;

namespace Traceability.Domain.Tests.Quality.Causes;

public class ValueCauseRankingTests
{
    private static readonly Gen<List<(int Level, double Value)>> AnyValues = Gen.Select(
        Gen.Int[-1, 3],
        Gen.Int[-20, 20],
        (level, value) => (level, 900 + value / 2.0)
    ).List[0, 80];

    [Fact]
    public void The_ranking_gives_the_figures_of_the_tests_themselves() =>
        AnyValues.Sample(rows =>
        {
            double[][] groups =
            [
                .. rows.Where(r => r.Level >= 0)
                    .GroupBy(r => r.Level)
                    .Select(g => g.Select(r => r.Value).ToArray())
                    .Where(g => g.Length >= 5),
            ];
            Computed<ValueCauseReport> ranked = ValueCauseRanking.Rank(Table(rows));
            Computed<ChiSquareResult> expected = KruskalWallis.Test(groups);
            Assert.Equal(expected.IsKnown, ranked.IsKnown);
            if (ranked.IsKnown)
            {
                ValueAssociation line = Assert.Single(ranked.Value.Associations);
                Assert.Equal(expected.Value.Statistic, line.KruskalWallis.Statistic, 1e-8);
                Assert.Equal(OneWayAnova.Test(groups).Value.OmegaSquared, line.OmegaSquared, 1e-8);
                Assert.Equal(WelchAnova.Test(groups).IsKnown, line.Welch.IsKnown);
                if (line.Welch.IsKnown)
                {
                    Assert.Equal(WelchAnova.Test(groups).Value.P, line.Welch.Value.P, 1e-8);
                }

                double[] furthest = [.. rows.Where(r => $"J-{r.Level}" == line.Furthest.Level).Select(r => r.Value)];
                double[] others = [.. groups.SelectMany(g => g).Order()];
                Assert.Equal(furthest.Length, line.Furthest.Summary.Size);
                Assert.Equal(furthest.Average(), line.Furthest.Summary.Mean, 1e-8);
                Assert.Equal((others.Sum() - furthest.Sum()) / (others.Length - furthest.Length), line.Furthest.MeanOfOthers, 1e-8);
            }
        });

    [Fact]
    public void The_factor_that_shifts_the_value_comes_first()
    {
        FactorTable table = FactorTable.FromRows(
            Enumerable
                .Range(0, 240)
                .Select(i => new FactorRow(
                    false,
                    900 + i * 37 % 23 + (i % 4 == 2 ? 15 : 0),
                    new Dictionary<string, string>
                    {
                        ["builder"] = $"B-{i % 3}",
                        ["adhesive lot"] = $"A-{i % 4}",
                        ["weekday"] = $"D-{i % 5}",
                    }
                ))
        );
        ValueAssociation first = ValueCauseRanking.Rank(table).Value.Associations[0];
        Assert.Equal(("adhesive lot", "A-2"), (first.Factor, first.Furthest.Level));
        Assert.True(first is { AdjustedP: < 1e-6, Furthest.CliffsDelta: > 0.5 });
    }

    [Fact]
    public void Values_that_do_not_differ_are_not_enough() =>
        Assert.False(ValueCauseRanking.Rank(Table([.. Enumerable.Range(0, 40).Select(i => (i % 2, 900.0))])).IsKnown);

    [Fact]
    public void Parts_without_a_value_are_left_out()
    {
        FactorTable table = FactorTable.FromRows(
            Enumerable
                .Range(0, 60)
                .Select(i => new FactorRow(false, i < 20 ? null : i % 7, new Dictionary<string, string> { ["jig"] = $"J-{i % 2}" }))
        );
        Assert.Equal(40, Assert.Single(ValueCauseRanking.Rank(table).Value.Associations).Values);
    }

    [Fact]
    public void A_factor_with_one_level_is_named_as_not_compared()
    {
        FactorTable table = FactorTable.FromRows(
            Enumerable
                .Range(0, 40)
                .Select(i => new FactorRow(false, i, new Dictionary<string, string> { ["jig"] = $"J-{i % 2}", ["supplier"] = "S-1" }))
        );
        Assert.Equal(["supplier"], ValueCauseRanking.Rank(table).Value.FactorsWithoutComparison);
    }

    private static FactorTable Table(IReadOnlyList<(int Level, double Value)> rows) =>
        FactorTable.FromRows(
            rows.Select(r => new FactorRow(
                false,
                r.Value,
                r.Level < 0 ? new Dictionary<string, string>() : new Dictionary<string, string> { ["jig"] = $"J-{r.Level}" }
            ))
        );
}
