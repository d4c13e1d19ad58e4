using Traceability.Domain.Tests.Sources;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Physics;

/// <summary>Every vendored value of the stages, of pairing and of decisions is reproduced by a call of the public functions.</summary>
public class StagesAgainstAnotherLibrary
{
    private static readonly Func<ExpectedValue, object?>[] Sections =
    [
        DiaphragmCases.Compute,
        CapsuleCases.Compute,
        InsulationCases.Compute,
        ClimateCases.Compute,
        AcousticCases.Compute,
        PatternCases.Compute,
        SamplingCases.Compute,
        PairingCases.Compute,
        DecisionCases.Compute,
    ];

    public static TheoryData<string> Ids => [.. ExpectedValue.Computed.Keys];

    [Theory]
    [MemberData(nameof(Ids))]
    [FromEachRow]
    public void The_public_functions_give_the_value_of_the_other_library(string id)
    {
        var value = ExpectedValue.Computed[id];
        value.Accept(Compute(value) ?? throw new InvalidOperationException($"no computation knows {id} {value.Formula}: {value.Name}"));
    }

    /// <summary>The results of every section that knows the value: exactly one should.</summary>
    internal static IEnumerable<object> EveryResult(ExpectedValue value) => Sections.Select(section => section(value)).OfType<object>();

    private static object? Compute(ExpectedValue value) => EveryResult(value).FirstOrDefault();
}
