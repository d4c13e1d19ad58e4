using Traceability.Domain.Quality.Sampling;
using Traceability.Domain.Stages.BoardSet;
using Traceability.Domain.Tests.AgainstAnotherLibrary.Physics;
using Traceability.Domain.Tests.Sources;

namespace Traceability.Domain.Tests.AgainstPublishedValues.Physics;

/// <summary>ISO 2859-1:1999 / MIL-STD-105E, from memory.</summary>
public class SamplingTableTests
{
    public static TheoryData<string> Rows => [.. ExpectedValue.Printed.Keys];

    [Theory]
    [MemberData(nameof(Rows))]
    [FromEachRow]
    public void Letters_and_plans_are_those_of_the_vendored_table(string id) =>
        ExpectedValue.Printed[id].Accept(SamplingCases.Compute(ExpectedValue.Printed[id])!);

    [Theory]
    [InlineData('E', 10, 13, 3)]
    [InlineData('F', 6.5, 20, 3)]
    [InlineData('G', 6.5, 32, 5)]
    [InlineData('H', 4.0, 50, 5)]
    [InlineData('H', 6.5, 50, 7)]
    [InlineData('J', 2.5, 80, 5)]
    [InlineData('J', 4.0, 80, 7)]
    [InlineData('J', 6.5, 80, 10)]
    [InlineData('K', 2.5, 125, 7)]
    [InlineData('K', 10, 125, 21)]
    [InlineData('L', 0.65, 200, 3)]
    [InlineData('L', 1.0, 200, 5)]
    [InlineData('M', 1.0, 315, 7)]
    [InlineData('M', 4.0, 315, 21)]
    [InlineData('N', 0.40, 500, 5)]
    [InlineData('Q', 0.65, 1250, 14)]
    [From(SourceKind.Printed, "ISO 2859-1:1999 / MIL-STD-105E, table 2-A, plans printed in the table itself, from memory")]
    public void Plans_are_those_of_the_table(char letter, double limit, int sampleSize, int accept)
    {
        var plan = SamplingPlan.ForLetter(letter, limit);
        Assert.Equal((letter, sampleSize, accept, accept + 1), (plan.Letter, plan.SampleSize, plan.Accept, plan.Reject));
    }

    [Theory]
    [InlineData('A', 1.0, 'E', 13, 0)]
    [InlineData('A', 10, 'C', 5, 1)]
    [InlineData('B', 10, 'C', 5, 1)]
    [InlineData('C', 4.0, 'B', 3, 0)]
    [InlineData('C', 6.5, 'D', 8, 1)]
    [InlineData('D', 4.0, 'E', 13, 1)]
    [InlineData('G', 0.65, 'F', 20, 0)]
    [InlineData('H', 0.65, 'J', 80, 1)]
    [InlineData('L', 10, 'K', 125, 21)]
    [InlineData('M', 6.5, 'L', 200, 21)]
    [InlineData('R', 0.015, 'P', 800, 0)]
    [InlineData('R', 0.010, 'Q', 1250, 0)]
    [From(SourceKind.Printed, "ISO 2859-1:1999 / MIL-STD-105E, table 2-A, cells with an arrow, from memory")]
    public void Arrows_lead_to_the_plan_they_point_at(char letter, double limit, char to, int sampleSize, int accept)
    {
        var plan = SamplingPlan.ForLetter(letter, limit);
        Assert.Equal((to, sampleSize, accept), (plan.Letter, plan.SampleSize, plan.Accept));
    }

    /// <summary>The ends of the lot ranges.</summary>
    [Theory]
    [InlineData(8, "AAAAAAB")]
    [InlineData(15, "AAAAABC")]
    [InlineData(25, "AABBBCD")]
    [InlineData(50, "ABBCCDE")]
    [InlineData(90, "BBCCCEF")]
    [InlineData(150, "BBCDDFG")]
    [InlineData(280, "BCDEEGH")]
    [InlineData(500, "BCDEFHJ")]
    [InlineData(1200, "CCEFGJK")]
    [InlineData(3200, "CDEGHKL")]
    [InlineData(10_000, "CDFGJLM")]
    [InlineData(35_000, "CDFHKMN")]
    [InlineData(150_000, "DEGJLNP")]
    [InlineData(500_000, "DEGJMPQ")]
    [InlineData(500_001, "DEHKNQR")]
    [From(SourceKind.Printed, "ISO 2859-1:1999 / MIL-STD-105E, table 1, code letters at all levels, from memory")]
    public void Code_letters_are_those_of_the_table(int lotSize, string letters) =>
        Assert.Equal(letters, string.Concat(Enum.GetValues<InspectionLevel>().Select(level => SamplingPlan.CodeLetter(lotSize, level))));

    /// <summary>Nonconforming percentage at which 95 % and 10 % of lots pass.</summary>
    [Theory]
    [InlineData(2, 0, 2.53, 68.4)]
    [InlineData(3, 0, 1.70, 53.6)]
    [InlineData(5, 0, 1.02, 36.9)]
    [InlineData(8, 0, 0.639, 25.0)]
    [InlineData(8, 1, 4.64, 40.6)]
    [InlineData(13, 0, 0.394, 16.2)]
    [InlineData(13, 1, 2.81, 26.8)]
    [InlineData(20, 0, 0.256, 10.9)]
    [InlineData(20, 1, 1.80, 18.1)]
    [InlineData(32, 0, 0.160, 6.94)]
    [InlineData(50, 0, 0.103, 4.50)]
    [From(SourceKind.Printed, "MIL-STD-105E, tables X-A-1 to X-J-1, from memory")]
    public void Operating_characteristics_round_to_the_printed_ones(int sampleSize, int accept, double at95, double at10)
    {
        Assert.Equal(1, 100 * OperatingCharacteristic.QualityAt(sampleSize, accept, 0.95) / at95, 6e-3);
        Assert.Equal(1, 100 * OperatingCharacteristic.QualityAt(sampleSize, accept, 0.10) / at10, 6e-3);
    }

    [Fact]
    [From(SourceKind.Definition, "ISO 2859-1, a sample size of the lot or more means 100 % inspection")]
    public void A_sample_as_large_as_the_lot_is_the_lot()
    {
        Assert.Equal(new SamplingPlan('E', 8, 0, true), SamplingPlan.ForLot(8, 1.0));
        Assert.False(SamplingPlan.ForLot(200, 1.0).IsWholeLot);
    }
}
