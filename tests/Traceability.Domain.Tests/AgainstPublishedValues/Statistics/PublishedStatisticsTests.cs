namespace Traceability.Domain.Tests.AgainstPublishedValues.Statistics;

/// <summary>Every vendored value of the statistics sections is reproduced by a call of the public functions.</summary>
public class PublishedStatisticsTests
{
    private static readonly IReadOnlyDictionary<string, Func<CheckValue, object>> Computations = new[]
    {
        SelfTestCases.All,
        ChartCases.All,
        CapabilityCases.All,
        ComparisonCases.All,
        YieldAndReturnCases.All,
        GaugeStudyCases.All,
    }
        .SelectMany(cases => cases)
        .ToDictionary();

    public static TheoryData<string> Ids => [.. CheckValue.All.Keys];

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_public_functions_give_the_published_value(string id)
    {
        CheckValue value = CheckValue.All[id];
        value.Accept(Computations[id](value));
    }

    [Fact]
    public void Every_vendored_value_is_computed_and_every_computation_has_its_value() =>
        Assert.Equal(CheckValue.All.Keys.Order(StringComparer.Ordinal), Computations.Keys.Order(StringComparer.Ordinal));
}
