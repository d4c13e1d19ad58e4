using System.Globalization;
using CsCheck;
using Traceability.Domain.Values;

namespace Traceability.Domain.Tests.Values;

public class EnteredDecimalTests
{
    [Theory]
    [InlineData("12.50", "12.50", "12.50")]
    [InlineData(" 12.50 ", "12.50", "12.50")]
    [InlineData("12,50", "12.50", "12.50")]
    [InlineData("+7", "7", "7")]
    [InlineData("-3.2", "-3.2", "-3.2")]
    [InlineData("\u22123.2", "-3.2", "-3.2")]
    [InlineData("-0.00", "0.00", "0.00")]
    [InlineData("0", "0", "0")]
    [InlineData(".5", "0.5", "0.5")]
    [InlineData("-,5", "-0.5", "-0.5")]
    [InlineData("+0012.50", "12.50", "12.50")]
    [InlineData("0,125", "0.125", "0.125")]
    [InlineData("1234,567", "1234.567", "1234.567")]
    [InlineData("1.234", "1.234", "1.234")]
    [InlineData("1.2E-3", "1.2e-3", "0.0012")]
    [InlineData("1e+11", "1e11", "100000000000")]
    [InlineData("1,234e3", "1.234e3", "1234")]
    [InlineData("123456789012", "123456789012", "123456789012")]
    [InlineData("1000000000000000", "1000000000000000", "1000000000000000")]
    [InlineData("0.000000000000001", "0.000000000000001", "0.000000000000001")]
    [InlineData("1.23456789012e-15", "1.23456789012e-15", "0.00000000000000123456789012")]
    public void A_number_keeps_its_value_and_its_digits(string typed, string digits, string value)
    {
        Assert.True(EnteredDecimal.TryParse(typed, out var number, out _));
        Assert.Equal(digits, number.Digits);
        Assert.Equal(decimal.Parse(value, CultureInfo.InvariantCulture), number.Value);
    }

    [Theory]
    [InlineData(null, "such as 12.50")]
    [InlineData("", "such as 12.50")]
    [InlineData("NaN", "not readings")]
    [InlineData("-inf", "not readings")]
    [InlineData("Infinity", "not readings")]
    [InlineData("∞", "not readings")]
    [InlineData("1,234", "type 1.234 or 1234")]
    [InlineData("-12,345", "type -12.345 or -12345")]
    [InlineData("1.234,5", "no thousands separators")]
    [InlineData("1,234.5", "no thousands separators")]
    [InlineData("1,234,567", "no thousands separators")]
    [InlineData("1 234", "no thousands separators")]
    [InlineData("1'234", "no thousands separators")]
    [InlineData("1_234", "no thousands separators")]
    [InlineData("12.", "plain number")]
    [InlineData("--1", "plain number")]
    [InlineData("1-", "plain number")]
    [InlineData("0x1F", "without a unit")]
    [InlineData("12.5 V", "without a unit")]
    [InlineData("12.5mV/Pa", "without a unit")]
    [InlineData("45%", "without a unit")]
    [InlineData("20°C", "without a unit")]
    [InlineData("1e", "without a unit")]
    [InlineData("e5", "plain number")]
    [InlineData("1e1.5", "plain number")]
    [InlineData("1e16", "between -15 and 15")]
    [InlineData("1e-16", "between -15 and 15")]
    [InlineData("1e999", "between -15 and 15")]
    [InlineData("1e99999999999", "without a unit")]
    [InlineData("1234567890123", "More than 12 digits")]
    [InlineData("1.234567890123", "More than 12 digits")]
    [InlineData("12.00000000000", "More than 12 digits")]
    [InlineData("1000000000000001", "More than 12 digits")]
    [InlineData("1000000000000010", "More than 12 digits")]
    [InlineData("1.1e15", "check the unit")]
    [InlineData("0.0000000000000009", "check the unit")]
    [InlineData("٣", "plain number")]
    [InlineData("000000000000000000000000000000000000000001", "Too long")]
    public void What_is_no_plain_number_is_refused_with_what_to_type(string? typed, string advice)
    {
        Assert.False(EnteredDecimal.TryParse(typed, out var number, out var problem));
        Assert.Null(number);
        Assert.Contains(advice, problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Digits_read_again_give_the_same_number() =>
        Gen.Select(Gen.Long[-999_999_999_999, 999_999_999_999], Gen.Int[0, 11])
            .Sample(
                (mantissa, scale) =>
                {
                    var typed = new decimal(
                        (int)(Math.Abs(mantissa) & 0xFFFFFFFF),
                        (int)(Math.Abs(mantissa) >> 32),
                        0,
                        mantissa < 0,
                        (byte)scale
                    ).ToString(CultureInfo.InvariantCulture);
                    return EnteredDecimal.TryParse(typed, out var once, out _)
                        && EnteredDecimal.TryParse(once.Digits, out var twice, out _)
                        && once == twice
                        && once.Value == decimal.Parse(typed, CultureInfo.InvariantCulture);
                }
            );

    [Fact]
    public void No_text_whatever_makes_it_throw() =>
        Gen.String.Sample(text =>
            EnteredDecimal.TryParse(text, out var number, out var problem) ? number.Digits.Length > 0 : problem.Length > 0
        );
}
