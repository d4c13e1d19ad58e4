using CsCheck;
using Traceability.Domain.Quality.Capability;
using Traceability.Domain.Quality.Distributions;

namespace Traceability.Domain.Tests.Quality;

public class CapabilityStudyTests
{
    private static readonly SpecificationLimits Limits = new(-4, 4);

    [Fact]
    public void A_steady_normal_process_may_be_quoted() => Assert.Empty(CapabilityStudy.Of(Normal(60), Limits).Value.Objections);

    [Fact]
    public void Twenty_nine_values_are_too_few_to_be_quoted_and_thirty_are_not()
    {
        Assert.Equal([CapabilityObjection.TooFewValues], CapabilityStudy.Of(Normal(29), Limits).Value.Objections);
        Assert.True(CapabilityStudy.Of(Normal(30), Limits).Value.MayBeQuoted);
    }

    [Fact]
    public void A_skewed_process_may_not_be_quoted() =>
        Assert.Contains(CapabilityObjection.NotNormal, CapabilityStudy.Of([.. Normal(60).Select(Math.Exp)], new(0, 30)).Value.Objections);

    [Fact]
    public void A_process_with_a_jump_may_not_be_quoted() =>
        Assert.Contains(
            CapabilityObjection.NotInControl,
            CapabilityStudy.Of([.. Normal(60).Select((x, i) => i < 30 ? x : x + 6)], Limits).Value.Objections
        );

    [Theory]
    [InlineData(new double[0])]
    [InlineData(new double[] { 1 })]
    [InlineData(new double[] { 1, 1, 1 })]
    public void Values_that_do_not_vary_are_not_enough(double[] values) => Assert.False(CapabilityStudy.Of(values, Limits).IsKnown);

    [Fact]
    public void With_one_limit_there_is_no_potential_index()
    {
        CapabilityStudy study = CapabilityStudy.Of(Normal(40), new(null, 4)).Value;
        Assert.Null(study.ShortTerm.Potential);
        Assert.Null(study.PotentialInterval);
        Assert.True(study.ActualInterval.Contains(study.Overall.Actual));
    }

    [Theory]
    [InlineData(null, null)]
    [InlineData(2.0, 2.0)]
    [InlineData(3.0, 2.0)]
    public void Limits_that_are_no_limits_are_refused(double? lower, double? upper) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => CapabilityStudy.Of(Normal(40), new(lower, upper)));

    [Fact]
    public void The_actual_index_never_exceeds_the_potential_one() =>
        Gen.Select(Gen.Double[-5, 5], Gen.Double[0.1, 5])
            .Sample(
                (mean, sigma) =>
                {
                    CapabilityIndices indices = CapabilityIndices.Of(mean, sigma, Limits);
                    Assert.True(indices.Actual <= indices.Potential + 1e-12);
                }
            );

    [Fact]
    public void More_spread_never_improves() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Double[0.1, 5], Gen.Double[0.01, 2])
            .Sample(
                (mean, sigma, more) =>
                {
                    Assert.True(CapabilityIndices.Of(mean, sigma + more, Limits).Actual < CapabilityIndices.Of(mean, sigma, Limits).Actual);
                    Assert.True(
                        CapabilityIndices.ShareOutside(mean, sigma + more, Limits) > CapabilityIndices.ShareOutside(mean, sigma, Limits)
                    );
                }
            );

    [Fact]
    public void Intervals_contain_the_index_and_narrow_with_more_values() =>
        Gen.Select(Gen.Double[0.2, 3], Gen.Int[5, 200])
            .Sample(
                (index, n) =>
                {
                    Assert.True(
                        CapabilityIntervals.OfPotential(index, n).Contains(index)
                            && CapabilityIntervals.OfOneSided(index, n).Contains(index)
                    );
                    Assert.True(CapabilityIntervals.OfActual(index, 2 * n).Lower > CapabilityIntervals.OfActual(index, n).Lower);
                    Assert.True(CapabilityIntervals.OneSidedExceeds(index, n) > CapabilityIntervals.OfOneSided(index, n).Lower);
                },
                iter: 30
            );

    /// <summary>
    /// Source: the defining equation P(T_{n-1}(3 sqrt(n) C_low) &lt;= 3 sqrt(n) C) = conf solved with mpmath, 20 digits.
    /// </summary>
    [Theory]
    [InlineData(1.33, 50, 1.0930702455046168)]
    [InlineData(1.0, 20, 0.70135122146451178)]
    [InlineData(0.5, 10, 0.23304833705716400)]
    public void The_exact_bound_of_a_one_sided_index(double index, int n, double expected) =>
        Assert.Equal(expected, CapabilityIntervals.OneSidedExceeds(index, n), 11);

    [Fact]
    public void Normality_needs_eight_values() =>
        Assert.Equal("not enough data: needs at least 8 values, has 7", AndersonDarling.Test(Normal(7)).ToString());

    [Fact]
    public void One_wild_value_among_thousands_is_not_normal_and_does_not_overflow()
    {
        AndersonDarlingResult result = AndersonDarling.Test([.. Normal(3000).Select(x => x * 1e-3), 1e6]).Value;
        Assert.True(double.IsFinite(result.Statistic) && result.P < 1e-20);
    }

    [Fact]
    public void Scale_and_origin_do_not_change_normality() =>
        Gen.Select(Gen.Double[-10, 10].Array[8, 40], Gen.Double[0.1, 9])
            .Sample(
                (values, scale) =>
                {
                    double[] moved = [.. values.Select(v => 100 + scale * v)];
                    Assert.Equal(AndersonDarling.Test(values).Value.Statistic, AndersonDarling.Test(moved).Value.Statistic, 1e-7);
                    Assert.Equal(ShapiroWilk.Test(values).Value.W, ShapiroWilk.Test(moved).Value.W, 1e-7);
                }
            );

    /// <summary>Normal scores in a scrambled order: as normal as n values can be, without randomness.</summary>
    private static double[] Normal(int n) =>
        [.. Enumerable.Range(0, n).OrderBy(i => i * 0.6180339887498949 % 1).Select(i => NormalDistribution.Quantile((i + 0.5) / n))];
}
