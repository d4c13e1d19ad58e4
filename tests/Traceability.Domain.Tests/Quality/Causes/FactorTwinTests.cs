using Traceability.Domain.Quality.Causes;

namespace Traceability.Domain.Tests.Quality.Causes;

public sealed class FactorTwinTests
{
    [Fact]
    public void Factors_with_the_same_level_in_every_row_become_one_under_both_names()
    {
        var joined = FactorTwins.Joined([
            FactorColumn.Of("builder", ["a", "b", null]),
            FactorColumn.Of("station", ["s", "s", "s"]),
            FactorColumn.Of("builder at stack", ["a", "b", null]),
        ]);
        Assert.Equal(["builder = builder at stack", "station"], joined.Select(f => f.Name));
        Assert.Equal(["a", "b"], joined[0].Levels);
    }

    [Fact]
    public void A_factor_that_knows_another_row_or_has_other_levels_is_no_twin() =>
        Assert.Equal(
            3,
            FactorTwins
                .Joined([FactorColumn.Of("one", ["a", "b"]), FactorColumn.Of("two", ["a", null]), FactorColumn.Of("three", ["x", "y"])])
                .Count
        );

    [Fact]
    public void Levels_coded_in_another_order_are_still_the_same() =>
        Assert.Single(FactorTwins.Joined([new FactorColumn("one", ["a", "b"], [0, 1, 0]), new FactorColumn("two", ["b", "a"], [1, 0, 1])]));

    [Fact]
    public void Of_many_twins_some_are_named_and_the_rest_counted() =>
        Assert.Equal(
            "f1 = f2 = 2 more",
            FactorTwins.Joined([.. Enumerable.Range(1, 4).Select(i => FactorColumn.Of($"f{i}", ["a", "b"]))], 2).Single().Name
        );

    [Fact]
    public void No_factors_stay_none() => Assert.Empty(FactorTwins.Joined([]));
}
