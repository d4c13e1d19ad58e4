namespace Traceability.Domain.Tests.AgainstPublishedValues.Physics;

/// <summary>Every vendored value of the stages, of pairing and of decisions is reproduced by a call of the public functions.</summary>
public class PublishedPhysicsTests
{
    private static readonly Func<PublishedValue, object?>[] Sections =
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

    public static TheoryData<string> Ids => [.. PublishedValue.All.Keys];

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_public_functions_give_the_published_value(string id)
    {
        var value = PublishedValue.All[id];
        value.Accept(Computed(value) ?? throw new InvalidOperationException($"no computation knows {id} {value.Formula}: {value.Name}"));
    }

    [Fact]
    public void Every_vendored_value_is_known_to_exactly_one_section() =>
        Assert.All(PublishedValue.All.Values, value => Assert.Single(Sections, section => section(value) is not null));

    [Fact]
    public void None_of_the_values_went_missing() => Assert.Equal(327, PublishedValue.All.Count);

    [Fact]
    public void A_value_that_no_computation_knows_is_noticed() =>
        Assert.Null(Computed(PublishedValue.All["A1-002"] with { Formula = "A99" }));

    private static object? Computed(PublishedValue value) =>
        Sections.Select(section => section(value)).FirstOrDefault(result => result is not null);
}
