using CsCheck;
using Traceability.Domain.Values.Limits;

namespace Traceability.Domain.Tests.Values.Limits;

public class DecisionTests
{
    private static readonly ToleranceInterval Limits = new(-36, -34);

    [Theory]
    [InlineData(-36.0, DecisionVerdict.Accept)]
    [InlineData(-34.0, DecisionVerdict.Accept)]
    [InlineData(-33.999, DecisionVerdict.Reject)]
    [InlineData(-36.001, DecisionVerdict.Reject)]
    public void Simple_acceptance_knows_the_limits_only(double value, DecisionVerdict expected) =>
        Assert.Equal(expected, DecisionRule.Simple.Decide(value, 0.2, Limits).Verdict);

    [Theory]
    [InlineData(-34.329, DecisionVerdict.Accept)]
    [InlineData(-34.328, DecisionVerdict.Conditional)]
    [InlineData(-34.0, DecisionVerdict.Conditional)]
    [InlineData(-33.999, DecisionVerdict.Reject)]
    [InlineData(-35.671, DecisionVerdict.Accept)]
    [InlineData(-35.672, DecisionVerdict.Conditional)]
    [InlineData(-36.001, DecisionVerdict.Reject)]
    public void Guarded_acceptance_keeps_off_the_limits(double value, DecisionVerdict expected) =>
        Assert.Equal(expected, DecisionRule.Guarded.Decide(value, 0.2, Limits).Verdict);

    [Fact]
    public void On_the_edge_of_the_guard_band_nineteen_of_twenty_conform() =>
        Assert.Equal(0.95, DecisionRule.Guarded.Decide(100 - 1.645 * 3, 3, new(null, 100)).ConformanceProbability, 1e-4);

    [Fact]
    public void A_one_sided_characteristic_has_one_guard_band()
    {
        var decision = DecisionRule.Guarded.Decide(1.2e11, 6e9, new(1e11, null));
        Assert.Equal(DecisionVerdict.Accept, decision.Verdict);
        Assert.Null(decision.AcceptTo);
        Assert.Equal(1e11 + 1.645 * 6e9, decision.AcceptFrom!.Value, 1);
    }

    [Fact]
    public void An_expanded_uncertainty_is_divided_by_its_factor() =>
        Assert.Equal(DecisionRule.Guarded.Decide(-34.4, 0.2, Limits), DecisionRule.Guarded.DecideExpanded(-34.4, 0.4, 2, Limits));

    [Fact]
    public void Moving_out_never_betters_the_verdict_or_the_probability() =>
        Gen.Select(Gen.Double[-35, -33], Gen.Double[0, 1], Gen.Double[0.01, 1])
            .Sample(
                (value, further, u) =>
                {
                    var before = DecisionRule.Guarded.Decide(value, u, Limits);
                    var after = DecisionRule.Guarded.Decide(value + further, u, Limits);
                    Assert.True(after.Verdict >= before.Verdict);
                    Assert.True(after.ConformanceProbability <= before.ConformanceProbability + 1e-12);
                }
            );

    [Fact]
    public void More_uncertainty_never_betters_the_verdict() =>
        Gen.Select(Gen.Double[-37, -33], Gen.Double[0, 1], Gen.Double[1, 3])
            .Sample(
                (value, u, times) =>
                    Assert.True(
                        DecisionRule.Guarded.Decide(value, u * times, Limits).Verdict
                            >= DecisionRule.Guarded.Decide(value, u, Limits).Verdict
                    )
            );

    [Fact]
    public void Limits_that_cannot_be_met_and_senseless_uncertainties_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => DecisionRule.Simple.Decide(1, 0.1, new(null, null)));
        Assert.Throws<ArgumentOutOfRangeException>(() => DecisionRule.Simple.Decide(1, 0.1, new(2, 1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => DecisionRule.Simple.Decide(1, -0.1, new(0, 1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => DecisionRule.Simple.Decide(double.NaN, 0.1, new(0, 1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new DecisionRule(-1));
    }
}
