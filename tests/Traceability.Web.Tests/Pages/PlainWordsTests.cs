using Traceability.Domain.Routes;

namespace Traceability.Web.Tests.Pages;

public sealed class PlainWordsTests
{
    [Theory]
    [InlineData("after 60 s 57 GOhm is outside at least 100 GOhm; more", "after 60 s 57 GΩ is below 100 GΩ; more")]
    [InlineData("noise 21.5 dBA is outside at most 18 dBA", "noise 21.5 dB(A) is above 18 dB(A)")]
    [InlineData("to that at 15 s 0.781 ratio is outside at least 0.9 ratio", "to that at 15 s 0.781 is below 0.9")]
    [InlineData("ring 929 Hz is outside 880 to 920 Hz", "ring 929 Hz is outside 880 to 920 Hz")]
    [InlineData("the ratio of 3 ratios, 2 counts", "the ratio of 3 ratios, 2 counts")]
    public void Units_are_said_with_their_symbols_and_one_sided_limits_with_their_side(string stored, string said) =>
        Assert.Equal(said, PlainWords.Of(null, null, stored));

    [Fact]
    public void Parts_are_counted_by_kind() =>
        Assert.Equal("2 × film lot, 1 × capsule", PlainWords.Counted(["film-lot", "capsule", "film-lot"]));
}
