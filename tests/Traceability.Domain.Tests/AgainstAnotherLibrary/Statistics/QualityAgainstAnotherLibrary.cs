using Traceability.Domain.Tests.Sources;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Statistics;

/// <summary>Every vendored value of the statistics sections is reproduced by a call of the public functions.</summary>
public class QualityAgainstAnotherLibrary
{
    internal static readonly IReadOnlyDictionary<string, Func<CheckValue, object>> Computations = new[]
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
    [FromEachRow]
    public void The_public_functions_give_the_value_of_the_other_library(string id)
    {
        CheckValue value = CheckValue.All[id];
        value.Accept(Computations[id](value));
    }
}
