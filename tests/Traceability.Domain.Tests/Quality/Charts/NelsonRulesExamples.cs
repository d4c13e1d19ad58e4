using CsCheck;
using Traceability.Domain.Quality.Charts;

namespace Traceability.Domain.Tests.Quality.Charts;

/// <summary>Series made for one rule each, after Nelson's definitions (J. Quality Technology 16, 1984).</summary>
public class NelsonRulesExamples
{
    [Theory]
    [InlineData(NelsonRule.OneBeyondThreeSigma, 1, new[] { 0.4, -3.01 })]
    [InlineData(NelsonRule.NineOnOneSide, 8, new[] { -0.2, -1.3, -0.4, -0.1, -1.2, -0.3, -0.2, -0.5, -0.1 })]
    [InlineData(NelsonRule.SixRisingOrFalling, 5, new[] { 0.9, 0.7, 0.3, -0.2, -0.4, -0.9 })]
    [InlineData(NelsonRule.FourteenAlternating, 13, new[] { 0.1, 1.2, -0.3, 0.4, 0.2, 1.1, -1.2, 0.3, -0.4, 1.5, 0.2, 0.9, -0.8, 0.1 })]
    [InlineData(NelsonRule.TwoOfThreeBeyondTwoSigma, 2, new[] { 2.1, 0.3, 2.4 })]
    [InlineData(NelsonRule.FourOfFiveBeyondOneSigma, 4, new[] { -1.1, -1.4, 0.2, -1.2, -1.3 })]
    [InlineData(NelsonRule.EightBeyondOneSigma, 7, new[] { 1.2, -1.1, 1.3, 1.1, -1.4, -1.2, 1.6, -1.1 })]
    public void A_series_breaks_the_rule_it_was_made_for_and_no_other(NelsonRule rule, int index, double[] series) =>
        Assert.Equal([new RuleBreak(rule, index)], NelsonRules.Check(series));

    [Theory]
    [InlineData(3.0)]
    [InlineData(-3.0)]
    public void A_point_on_the_limit_gives_no_sign(double z) => Assert.Empty(NelsonRules.Check([z]));

    [Fact]
    public void A_point_on_the_centre_line_ends_a_run_on_one_side() =>
        Assert.DoesNotContain(
            NelsonRules.Check([.. Enumerable.Repeat(0.5, 8), 0, .. Enumerable.Repeat(0.5, 8)]),
            b => b.Rule == NelsonRule.NineOnOneSide
        );

    [Fact]
    public void Equal_neighbours_end_a_rise() => Assert.Empty(NelsonRules.Check([-0.4, -0.2, 0, 0.2, 0.2, 0.4, 0.6]));

    [Fact]
    public void Two_of_three_beyond_two_sigma_on_different_sides_give_no_sign() => Assert.Empty(NelsonRules.Check([2.2, 0.1, -2.3]));

    [Fact]
    public void A_long_run_is_reported_at_every_point_that_completes_it() =>
        Assert.Equal(
            [8, 9, 10],
            NelsonRules
                .Check([.. Enumerable.Range(0, 11).Select(i => i % 2 == 0 ? 0.5 : 1.5)])
                .Where(b => b.Rule == NelsonRule.NineOnOneSide)
                .Select(b => b.Index)
        );

    [Fact]
    public void A_series_and_its_mirror_image_break_the_same_rules() =>
        Gen.Double[-4, 4].List[0, 60].Sample(z => Assert.Equal(NelsonRules.Check(z), NelsonRules.Check([.. z.Select(x => -x)])));

    [Fact]
    public void Points_to_come_do_not_change_the_breaks_so_far() =>
        Gen.Double[-4, 4]
            .List[1, 60]
            .Sample(z => Assert.Equal(NelsonRules.Check(z).Where(b => b.Index < z.Count - 1), NelsonRules.Check(z[..^1])));
}
