using Traceability.Domain.Evidence;
using static Traceability.Domain.Tests.Evidence.EvidenceText;

namespace Traceability.Domain.Tests.Evidence;

public class FrequencyResponseFileTests
{
    private static ParsedFile<FrequencyResponse> Read(params string[] lines) =>
        FrequencyResponseFile.Read(Lines(["frequency_hz,level_db", .. lines]));

    [Theory]
    [InlineData("100", "frequency_hz 100 is given twice")]
    [InlineData("99.9", "frequency_hz 99.9 comes after 100: sort by rising frequency")]
    [InlineData("0", "not between 1 and 200000")]
    [InlineData("-100", "not between 1 and 200000")]
    [InlineData("0.99", "not between 1 and 200000")]
    [InlineData("200001", "not between 1 and 200000")]
    [InlineData("nan", "not a plain number")]
    public void A_frequency_repeated_out_of_order_or_out_of_range_is_refused(string frequency, string because)
    {
        var problem = Assert.Single(Read("20,0", "100,0", frequency + ",0").Problems);

        Assert.Equal(4, problem.Line);
        Assert.Contains(because, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Three_points_are_enough_and_two_are_not()
    {
        Assert.True(Read("1,0", "100,-300", "200000,300").IsGood);
        Assert.Equal(FileFault.TooLittle, Assert.Single(Read("1,0", "100,0").Problems).Fault);
    }

    [Theory]
    [InlineData("-300.1")]
    [InlineData("300.1")]
    [InlineData("-inf")]
    public void A_level_that_cannot_be_is_refused(string level) =>
        Assert.Equal(2, Assert.Single(Read("20," + level, "30,0", "40,0").Problems).Line);
}
