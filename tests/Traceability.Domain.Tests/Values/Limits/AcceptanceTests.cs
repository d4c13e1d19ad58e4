using CsCheck;
using Traceability.Domain.Values.Limits;

namespace Traceability.Domain.Tests.Values.Limits;

public class AcceptanceTests
{
    private static readonly Acceptance Guarded = new(880, 920, 2, true);

    /// <summary>Guard band 1.645 x 2 / 2 = 1.645 Hz inside each limit (JCGM 106:2012, clause 8, from memory).</summary>
    [Theory]
    [InlineData("879.999", Conformity.NotMet)]
    [InlineData("880", Conformity.Conditional)]
    [InlineData("881.644", Conformity.Conditional)]
    [InlineData("881.645", Conformity.Met)]
    [InlineData("918.355", Conformity.Met)]
    [InlineData("918.356", Conformity.Conditional)]
    [InlineData("920", Conformity.Conditional)]
    [InlineData("920.001", Conformity.NotMet)]
    public void Edges_belong_to_the_better_side(string value, Conformity expected) =>
        Assert.Equal(expected, Guarded.Judge(decimal.Parse(value, System.Globalization.CultureInfo.InvariantCulture)));

    [Fact]
    public void A_value_on_the_edge_of_the_guard_band_conforms_with_95_percent()
    {
        var oneSided = new Acceptance(880, null, 2, true);
        Assert.Equal(0.95, oneSided.ProbabilityOfConformance(881.645m)!.Value, 4);
        Assert.Equal(0.5, oneSided.ProbabilityOfConformance(880)!.Value, 12);
    }

    [Fact]
    public void Simple_acceptance_judges_by_the_limits_alone_and_still_states_the_probability()
    {
        var simple = new Acceptance(880, 920, 2);
        Assert.Equal((Conformity.Met, Conformity.NotMet), (simple.Judge(880), simple.Judge(879.99m)));
        Assert.Equal(0.5, simple.ProbabilityOfConformance(880)!.Value, 12);
    }

    [Fact]
    public void Nothing_is_said_of_a_probability_without_uncertainty_or_without_limits()
    {
        Assert.Null(new Acceptance(880, 920).ProbabilityOfConformance(900));
        Assert.Null(new Acceptance(null, null, 2).ProbabilityOfConformance(900));
    }

    [Fact]
    public void A_wider_uncertainty_never_betters_a_verdict_and_the_exact_rule_agrees() =>
        Gen.Select(Gen.Decimal[870, 930], Gen.Decimal[0.01m, 20], Gen.Decimal[0.01m, 20])
            .Sample(
                (value, one, other) =>
                {
                    var (narrow, wide) = (Math.Min(one, other), Math.Max(one, other));
                    var before = new Acceptance(880, 920, narrow, true).Judge(value);
                    Assert.True(before <= new Acceptance(880, 920, wide, true).Judge(value));
                    var edge = Math.Min(Math.Abs(value - 880 - 0.8225m * narrow), Math.Abs(920 - value - 0.8225m * narrow));
                    if (edge > 1e-9m)
                    {
                        var exact = DecisionRule.Guarded.DecideExpanded((double)value, (double)narrow, 2, new(880, 920)).Verdict;
                        Assert.Equal((int)before, (int)exact);
                    }
                }
            );
}
