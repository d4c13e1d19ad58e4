using Traceability.Domain.Gates.Rules;

namespace Traceability.Domain.Tests.Architecture;

public class DomainReferencesTests
{
    [Fact]
    public void The_core_refers_to_nothing_beyond_the_list() =>
        Assert.Empty(Fence.Beyond(Fence.AllowedForTheCore, typeof(Gatekeeper).Assembly));

    [Fact]
    public void An_assembly_that_refers_to_more_is_reported_by_name()
    {
        var beyond = Fence.Beyond(Fence.AllowedForTheCore, typeof(DomainReferencesTests).Assembly);

        Assert.Contains("xunit.core", beyond);
        Assert.Contains("CsCheck", beyond);
        Assert.Contains("Traceability.Domain", beyond);
    }

    [Theory]
    [InlineData("MathNet.Numerics")]
    [InlineData("YamlDotNet")]
    [InlineData("System.Text.Json")]
    public void A_reference_taken_off_the_list_is_reported(string taken) =>
        Assert.Equal([taken], Fence.Beyond(Fence.AllowedForTheCore.Where(a => a != taken).ToHashSet(), typeof(Gatekeeper).Assembly));
}
