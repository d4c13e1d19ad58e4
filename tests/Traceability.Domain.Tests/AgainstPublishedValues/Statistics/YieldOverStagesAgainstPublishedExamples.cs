using Traceability.Domain.Quality.Yields;
using Traceability.Domain.Tests.Sources;
using static Traceability.Domain.Tests.Sources.Nearness;

namespace Traceability.Domain.Tests.AgainstPublishedValues.Statistics;

/// <summary>The yield over stages is a survival curve whose times are stages: the same numbers must come out.</summary>
public class YieldOverStagesAgainstPublishedExamples
{
    private static readonly (int Reached, int Failed)[] Maintained = [(11, 1), (10, 1), (8, 1), (7, 1), (5, 1), (4, 1), (2, 1)];

    /// <summary>Computed again here from the formula with Python's floats.</summary>
    [Theory]
    [InlineData(1, 0.909, 0.508, 0.987)]
    [InlineData(2, 0.818, 0.447, 0.951)]
    [InlineData(3, 0.716, 0.350, 0.899)]
    [InlineData(4, 0.614, 0.266, 0.835)]
    [InlineData(5, 0.491, 0.167, 0.753)]
    [InlineData(6, 0.368, 0.093, 0.657)]
    [InlineData(7, 0.184, 0.012, 0.525)]
    [From(
        SourceKind.Printed,
        "R. G. Miller, Survival Analysis (1997), aml, Maintained, as R's survfit prints it (\"log-log\"), from memory"
    )]
    public void Greenwoods_interval_on_the_log_log_scale(int stages, double yield, double lower, double upper)
    {
        YieldOverStages over = YieldOverStages.Of(Maintained[..stages]).Value;
        Printed(yield, over.Value, 3);
        Printed(lower, over.Interval.Lower, 3);
        Printed(upper, over.Interval.Upper, 3);
    }

    [Fact]
    [From(SourceKind.Definition, "Wilson's interval for 3 of 3, lower end 1/(1 + z²/3), and for 0 of 4, upper end (z²/4)/(1 + z²/4)")]
    public void Where_the_formula_says_nothing_Wilsons_interval_does()
    {
        YieldOverStages perfect = YieldOverStages.Of([(24, 0), (3, 0)]).Value,
            none = YieldOverStages.Of([(24, 2), (4, 4)]).Value;
        Assert.Equal((1, 0.4385, 1), (perfect.Value, Math.Round(perfect.Interval.Lower, 4), perfect.Interval.Upper));
        Assert.Equal((0, 0, 0.4899), (none.Value, none.Interval.Lower, Math.Round(none.Interval.Upper, 4)));
    }

    [Fact]
    [From(SourceKind.Definition, "a product over nothing reached")]
    public void Without_anybody_at_any_stage_there_is_no_yield() =>
        Assert.Equal(
            "not enough data: needs at least 1 parts that reached a stage, has 0",
            YieldOverStages.Of([(0, 0)]).Missing!.ToString()
        );

    /// <summary>Then the product is what passed of what was started.</summary>
    [Fact]
    [From(SourceKind.Definition, "when every part reached every stage until it failed: 22 of 24")]
    public void When_all_are_through_the_yield_is_the_share_that_passed() =>
        Near(22 / 24.0, YieldOverStages.Of([(24, 1), (23, 1)]).Value.Value, 1e-12);
}
