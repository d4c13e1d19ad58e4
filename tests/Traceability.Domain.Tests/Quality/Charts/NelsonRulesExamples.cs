using CsCheck;
using Traceability.Domain.Quality.Charts;

namespace Traceability.Domain.Tests.Quality.Charts;

/// <summary>Series made for one rule each, after Nelson's definitions (J. Quality Technology 16, 1984).</summary>
public class NelsonRulesExamples
{
    private const bool Up = true;
    private const bool Down = false;

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

    /// <summary>
    /// Each comparison of each rule at its limit. The series keeps the rule while that point lies exactly on the limit (3, 2 or 1 sigma,
    /// the centre line, the neighbour's value), and breaks it with the point at the next number that a double can hold, up or down.
    /// </summary>
    [Theory]
    [InlineData(NelsonRule.OneBeyondThreeSigma, 0, Up, new[] { 3.0 })]
    [InlineData(NelsonRule.NineOnOneSide, 0, Up, new[] { 0.0, 0.4, 0.2, 0.3, 0.1, 0.4, 0.2, 0.3, 0.1 })]
    [InlineData(NelsonRule.NineOnOneSide, 4, Up, new[] { 0.1, 0.4, 0.2, 0.3, 0.0, 0.4, 0.2, 0.3, 0.1 })]
    [InlineData(NelsonRule.NineOnOneSide, 8, Up, new[] { 0.1, 0.4, 0.2, 0.3, 0.1, 0.4, 0.2, 0.3, 0.0 })]
    [InlineData(NelsonRule.SixRisingOrFalling, 1, Up, new[] { 0.1, 0.1, 0.2, 0.3, 0.4, 0.5 })]
    [InlineData(NelsonRule.SixRisingOrFalling, 5, Up, new[] { 0.1, 0.2, 0.3, 0.4, 0.5, 0.5 })]
    [InlineData(NelsonRule.FourteenAlternating, 0, Up, new[] { 0.1, 0.1, 0.2, 0.1, 0.2, 0.1, 0.2, 0.1, 0.2, 0.1, 0.2, 0.1, 0.2, 0.1 })]
    [InlineData(NelsonRule.FourteenAlternating, 13, Down, new[] { 0.2, 0.1, 0.2, 0.1, 0.2, 0.1, 0.2, 0.1, 0.2, 0.1, 0.2, 0.1, 0.2, 0.2 })]
    [InlineData(NelsonRule.TwoOfThreeBeyondTwoSigma, 0, Up, new[] { 2.0, 0.3, 2.4 })]
    [InlineData(NelsonRule.TwoOfThreeBeyondTwoSigma, 2, Up, new[] { 2.4, 0.3, 2.0 })]
    [InlineData(NelsonRule.FourOfFiveBeyondOneSigma, 0, Up, new[] { 1.0, 1.4, 0.2, 1.2, 1.3 })]
    [InlineData(NelsonRule.FourOfFiveBeyondOneSigma, 4, Up, new[] { 1.3, 1.4, 0.2, 1.2, 1.0 })]
    [InlineData(
        NelsonRule.FifteenWithinOneSigma,
        0,
        Down,
        new[] { 1.0, -0.2, 0.3, 0, -0.4, 0.4, 0.2, -0.3, -0.1, 0.2, 0, -0.2, 0.3, 0.4, -0.1 }
    )]
    [InlineData(
        NelsonRule.FifteenWithinOneSigma,
        14,
        Down,
        new[] { 0.1, -0.2, 0.3, 0, -0.4, 0.4, 0.2, -0.3, -0.1, 0.2, 0, -0.2, 0.3, 0.4, 1.0 }
    )]
    [InlineData(NelsonRule.EightBeyondOneSigma, 0, Up, new[] { 1.0, -1.1, 1.3, 1.1, -1.4, -1.2, 1.6, -1.1 })]
    [InlineData(NelsonRule.EightBeyondOneSigma, 7, Up, new[] { -1.2, -1.1, 1.3, 1.1, -1.4, -1.2, 1.6, 1.0 })]
    public void A_point_on_the_limit_gives_no_sign_and_the_next_number_beyond_it_does(NelsonRule rule, int index, bool up, double[] series)
    {
        double beyond = up ? Math.BitIncrement(series[index]) : Math.BitDecrement(series[index]);
        double[] broken = [.. series[..index], beyond, .. series[(index + 1)..]];

        Assert.All([series, Mirrored(series)], kept => Assert.DoesNotContain(rule, NelsonRules.Check(kept).Select(b => b.Rule)));
        Assert.All([broken, Mirrored(broken)], moved => Assert.Contains(new RuleBreak(rule, series.Length - 1), NelsonRules.Check(moved)));
    }

    [Theory]
    [InlineData(NelsonRule.TwoOfThreeBeyondTwoSigma, 1, new[] { 2.4, 2.5, 2.0 })]
    [InlineData(NelsonRule.TwoOfThreeBeyondTwoSigma, 1, new[] { 2.4, 2.5, 0.3 })]
    [InlineData(NelsonRule.FourOfFiveBeyondOneSigma, 3, new[] { 1.1, 1.2, 1.4, 1.3, 1.0 })]
    [InlineData(NelsonRule.FourOfFiveBeyondOneSigma, 3, new[] { 1.1, 1.2, 1.4, 1.3, 0.2 })]
    public void A_point_that_does_not_lie_out_itself_completes_no_two_of_three_and_no_four_of_five(
        NelsonRule rule,
        int completedAt,
        double[] series
    ) =>
        Assert.All(
            [series, Mirrored(series)],
            s => Assert.Equal([completedAt], NelsonRules.Check(s).Where(b => b.Rule == rule).Select(b => b.Index))
        );

    [Fact]
    public void Fifteen_within_one_sigma_are_a_sign_and_fourteen_are_none()
    {
        double[] hugging = [0.1, -0.2, 0.3, 0, -0.4, 0.4, 0.2, -0.3, -0.1, 0.2, 0, -0.2, 0.3, 0.4, -0.1];

        Assert.Equal([new RuleBreak(NelsonRule.FifteenWithinOneSigma, 14)], NelsonRules.Check(hugging));
        Assert.Empty(NelsonRules.Check(hugging[1..]));
    }

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

    private static double[] Mirrored(double[] series) => [.. series.Select(z => -z)];
}
