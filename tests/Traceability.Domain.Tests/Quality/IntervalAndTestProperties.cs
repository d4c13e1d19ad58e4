using CsCheck;
using Traceability.Domain.Quality;
using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.Intervals;
using Traceability.Domain.Quality.ManyTests;
using Traceability.Domain.Quality.Yields;

namespace Traceability.Domain.Tests.Quality;

public class IntervalAndTestProperties
{
    private static readonly Gen<(int K, int N)> AnyCount = Gen.Int[1, 400].SelectMany(n => Gen.Int[0, n].Select(k => (k, n)));
    private static readonly Gen<List<double>> AnyPValues = Gen.Double[0, 1].List[0, 40];
    private static readonly Gen<FailureTable> AnyTable = Gen.Select(
        Gen.Int[0, 40],
        Gen.Int[0, 40],
        Gen.Int[0, 40],
        Gen.Int[0, 40],
        (a, b, c, d) => new FailureTable(a, b, c, d)
    );

    [Fact]
    public void Intervals_contain_the_estimate_and_stay_inside_zero_and_one() =>
        AnyCount.Sample(count =>
            Assert.All(
                [WilsonInterval.Of(count.K, count.N), ClopperPearsonInterval.Of(count.K, count.N), JeffreysInterval.Of(count.K, count.N)],
                answer =>
                    Assert.True(
                        answer.Value.Contains((double)count.K / count.N) && answer.Value.Lower >= 0 && answer.Value.Upper <= 1,
                        $"{count} {answer}"
                    )
            )
        );

    [Fact]
    public void The_exact_interval_holds_the_jeffreys_interval() =>
        AnyCount.Sample(count =>
        {
            Interval exact = ClopperPearsonInterval.Of(count.K, count.N).Value,
                jeffreys = JeffreysInterval.Of(count.K, count.N).Value;
            Assert.True(exact.Lower <= jeffreys.Lower && jeffreys.Upper <= exact.Upper);
        });

    [Fact]
    public void One_more_good_part_raises_both_ends() =>
        AnyCount
            .Where(c => c.K < c.N)
            .Sample(count =>
                Assert.All(
                    [WilsonInterval.Of, ClopperPearsonInterval.Of],
                    (Func<int, int, double, Computed<Interval>> of) =>
                    {
                        Interval before = of(count.K, count.N, 0.95).Value,
                            after = of(count.K + 1, count.N, 0.95).Value;
                        Assert.True(after.Lower > before.Lower && (after.Upper > before.Upper || before.Upper == 1));
                    }
                )
            );

    [Fact]
    public void More_confidence_widens() =>
        AnyCount.Sample(count =>
        {
            Interval narrow = WilsonInterval.Of(count.K, count.N, 0.8).Value,
                wide = WilsonInterval.Of(count.K, count.N, 0.99).Value;
            Assert.True(wide.Lower <= narrow.Lower && narrow.Upper <= wide.Upper);
        });

    [Fact]
    public void Failures_seen_from_the_other_side_mirror_the_interval() =>
        AnyCount.Sample(count =>
        {
            Interval good = WilsonInterval.Of(count.K, count.N).Value,
                bad = WilsonInterval.Of(count.N - count.K, count.N).Value;
            Assert.Equal(1 - bad.Upper, good.Lower, 1e-12);
        });

    [Fact]
    public void No_parts_are_not_enough() =>
        Assert.All(
            [WilsonInterval.Of(0, 0), ClopperPearsonInterval.Of(0, 0), JeffreysInterval.Of(0, 0)],
            answer => Assert.Equal("not enough data: needs at least 1 parts, has 0", answer.ToString())
        );

    [Theory]
    [InlineData(-1, 5)]
    [InlineData(6, 5)]
    [InlineData(0, -1)]
    public void Impossible_counts_are_refused(int k, int n) => Assert.Throws<ArgumentOutOfRangeException>(() => WilsonInterval.Of(k, n));

    [Fact]
    public void Fisher_does_not_care_which_group_is_called_here() =>
        AnyTable
            .Where(t => t.Missing() is null)
            .Sample(t =>
            {
                FisherExactResult here = FisherExact.Test(t).Value;
                FisherExactResult there = FisherExact.Test(new(t.FailedElsewhere, t.PassedElsewhere, t.FailedHere, t.PassedHere)).Value;
                Assert.Equal(here.P, there.P, 1e-9);
                Assert.Equal(here.PMoreHere, there.PFewerHere, 1e-9);
                Assert.Equal(
                    1,
                    here.OddsRatio is 0 or double.PositiveInfinity
                        ? (here.OddsRatio == 0) == double.IsPositiveInfinity(there.OddsRatio)
                            ? 1
                            : 0
                        : here.OddsRatio * there.OddsRatio,
                    1e-9
                );
            });

    [Fact]
    public void The_odds_ratio_lies_in_its_interval_and_nothing_is_nan() =>
        AnyTable
            .Where(t => t.Missing() is null)
            .Sample(t =>
            {
                FisherExactResult r = FisherExact.Test(t).Value;
                Assert.True(r.OddsRatioInterval.Contains(r.OddsRatio) && r.P is > 0 and <= 1, $"{t} {r}");
            });

    [Fact]
    public void An_interval_without_one_means_a_small_p_on_that_side() =>
        AnyTable
            .Where(t => t.Missing() is null)
            .Sample(t =>
            {
                FisherExactResult r = FisherExact.Test(t).Value;
                Assert.Equal(r.PMoreHere < 0.025, r.OddsRatioInterval.Lower > 1);
                Assert.Equal(r.PFewerHere < 0.025, r.OddsRatioInterval.Upper < 1);
            });

    [Fact]
    public void The_pooled_odds_ratio_does_not_depend_on_the_order_of_strata() =>
        AnyTable
            .List[1, 6]
            .Sample(strata =>
            {
                Computed<CochranMantelHaenszelResult> one = CochranMantelHaenszel.Test(strata),
                    other = CochranMantelHaenszel.Test([.. Enumerable.Reverse(strata)]);
                Assert.Equal(one.IsKnown, other.IsKnown);
                if (one.IsKnown)
                {
                    Assert.Equal(one.Value.PCorrected, other.Value.PCorrected, 1e-9);
                    Assert.True(one.Value.OddsRatioInterval.Contains(one.Value.CommonOddsRatio) && !double.IsNaN(one.Value.P));
                    Assert.True(one.Value.PCorrected >= one.Value.P);
                }
            });

    [Fact]
    public void Adjusted_p_values_keep_their_order_and_never_shrink() =>
        AnyPValues.Sample(p =>
            Assert.All(
                [BenjaminiHochberg.Adjust(p), Holm.Adjust(p), Bonferroni.Adjust(p)],
                adjusted =>
                {
                    int[] order = [.. Enumerable.Range(0, p.Count).OrderBy(i => p[i])];
                    Assert.Equal(adjusted.Order(), order.Select(i => adjusted[i]));
                    Assert.All(adjusted.Zip(p), pair => Assert.InRange(pair.First, pair.Second, 1));
                }
            )
        );

    [Fact]
    public void The_three_corrections_are_ever_stricter() =>
        AnyPValues.Sample(p =>
        {
            IReadOnlyList<double> mild = BenjaminiHochberg.Adjust(p),
                middle = Holm.Adjust(p),
                blunt = Bonferroni.Adjust(p);
            Assert.All(Enumerable.Range(0, p.Count), i => Assert.True(mild[i] <= middle[i] + 1e-15 && middle[i] <= blunt[i] + 1e-15));
        });

    [Fact]
    public void A_p_value_outside_zero_to_one_is_refused() =>
        Assert.Throws<ArgumentException>(() => BenjaminiHochberg.Adjust([0.5, double.NaN]));

    [Fact]
    public void Rolled_throughput_of_one_step_is_its_first_pass_yield_with_wilsons_interval() =>
        AnyCount
            .Where(c => c.K > 0)
            .Sample(count =>
            {
                RolledThroughputYield rolled = RolledThroughputYield.Of([count]).Value;
                Interval wilson = WilsonInterval.Of(count.K, count.N).Value;
                Assert.Equal(wilson.Lower, rolled.Interval.Lower, 1e-12);
                Assert.Equal(wilson.Upper, rolled.Interval.Upper, 1e-12);
            });

    [Fact]
    public void Another_step_never_raises_the_rolled_throughput() =>
        Gen.Select(AnyCount.List[1, 6], AnyCount)
            .Sample(
                (steps, another) =>
                {
                    RolledThroughputYield before = RolledThroughputYield.Of(steps).Value,
                        after = RolledThroughputYield.Of([.. steps, another]).Value;
                    Assert.True(after.Value <= before.Value && after.Interval.Contains(after.Value) && after.Interval.Upper <= 1);
                }
            );

    [Fact]
    public void A_step_without_judged_parts_is_not_enough() =>
        Assert.Equal("steps with judged parts", RolledThroughputYield.Of([(5, 5), (0, 0)]).Missing!.What);
}
