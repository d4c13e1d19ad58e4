using CsCheck;
using Traceability.Domain.Quality.Charts;

namespace Traceability.Domain.Tests.Quality.Charts;

public class ChartProperties
{
    private static readonly Gen<List<double>> AnyValues = Gen.Double[-50, 50].List[2, 60];

    [Fact]
    public void Moving_all_values_moves_the_limits_with_them() =>
        Gen.Select(AnyValues, Gen.Double[-1000, 1000])
            .Sample(
                (values, shift) =>
                {
                    IndividualsChart chart = IndividualsChart.Of(values).Value,
                        shifted = IndividualsChart.Of([.. values.Select(v => v + shift)]).Value;
                    Assert.Equal(chart.Individuals.Upper + shift, shifted.Individuals.Upper, 1e-8);
                    Assert.Equal(chart.Individuals.Lower + shift, shifted.Individuals.Lower, 1e-8);
                    Assert.Equal(chart.Ranges.Upper, shifted.Ranges.Upper, 1e-8);
                }
            );

    [Fact]
    public void Equal_values_have_limits_on_the_centre_line_and_break_no_rule()
    {
        IndividualsChart chart = IndividualsChart.Of([.. Enumerable.Repeat(5.0, 40)]).Value;
        Assert.Equal(new ChartLimits(5, 5, 5), chart.Individuals);
        Assert.Empty(chart.RuleBreaks);
        Assert.NotEmpty(NelsonRules.Check(chart.Standardised));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Fewer_than_two_values_are_not_enough_for_a_chart(int values) =>
        Assert.Equal(
            $"not enough data: needs at least 2 values, has {values}",
            IndividualsChart.Of(new double[values]).Missing!.ToString()
        );

    [Fact]
    public void A_value_that_is_no_number_is_refused() => Assert.Throws<ArgumentException>(() => IndividualsChart.Of([1, double.NaN]));

    [Fact]
    public void With_all_weight_on_the_newest_value_the_average_is_the_value() =>
        AnyValues.Sample(values => Assert.Equal(values, EwmaChart.Of(values, 0, 1, lambda: 1).Averages));

    [Fact]
    public void The_limits_of_the_average_widen_towards_the_final_ones() =>
        AnyValues.Sample(values =>
        {
            EwmaChart chart = EwmaChart.Of(values, 0, 1);
            double[] upper = [.. chart.Limits.Select(l => l.Upper)];
            Assert.Equal(upper.Order(), upper);
            Assert.True(upper[^1] <= chart.FinalLimits.Upper);
        });

    [Fact]
    public void The_order_of_values_inside_a_subgroup_changes_nothing() =>
        Gen.Double[-50, 50]
            .Array[4]
            .Array[2, 10]
            .Sample(groups =>
            {
                SubgroupChart chart = SubgroupChart.Of(groups).Value,
                    turned = SubgroupChart.Of([.. groups.Select(g => g.Reverse().ToArray())]).Value;
                Assert.Equal(chart.MeansByRange.Upper, turned.MeansByRange.Upper, 1e-9);
                Assert.Equal(chart.DeviationLimits.Upper, turned.DeviationLimits.Upper, 1e-9);
            });

    [Fact]
    public void Subgroups_of_unequal_size_are_refused() =>
        Assert.Throws<ArgumentException>(() =>
            SubgroupChart.Of([
                [1, 2],
                [1, 2, 3],
            ])
        );

    [Fact]
    public void An_unfinished_last_subgroup_is_left_out() => Assert.Equal(2, SubgroupChart.Consecutive([1, 2, 3, 4, 5], 2).Count);
}
