using Traceability.Domain.Records;

namespace Traceability.Domain.Tests.Records;

/// <summary>Which digits are the first to be tried: common practice, no source.</summary>
public class PinDigitsTests
{
    [Theory]
    [InlineData("0000")]
    [InlineData("777777")]
    [InlineData("1234")]
    [InlineData("0369")]
    [InlineData("9876543210")]
    [InlineData("9630")]
    public void Equal_ascending_and_descending_digits_are_in_a_row(string pin) => Assert.True(PinDigits.AreInARow(pin));

    [Theory]
    [InlineData("1243")]
    [InlineData("1112")]
    [InlineData("1122")]
    [InlineData("7890")]
    [InlineData("4711")]
    public void Others_are_not(string pin) => Assert.False(PinDigits.AreInARow(pin));

    [Theory]
    [InlineData("123", false)]
    [InlineData("1243", true)]
    [InlineData("124312431243", true)]
    [InlineData("1243124312431", false)]
    [InlineData("12a4", false)]
    [InlineData("١٢٤٣", false)]
    public void A_PIN_has_four_to_twelve_digits(string text, bool isOne) => Assert.Equal(isOne, PinDigits.Are(text));
}
