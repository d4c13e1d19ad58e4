using System.Globalization;
using CsCheck;
using Traceability.Domain.Ledger;

namespace Traceability.Domain.Tests.Ledger;

public class EcmaScriptNumberTests
{
    // Source: RFC 8785, appendix B (the table, from memory; each line also computed with Node.js String(number)).
    [Theory]
    [InlineData("0000000000000000", "0")]
    [InlineData("8000000000000000", "0")]
    [InlineData("0000000000000001", "5e-324")]
    [InlineData("8000000000000001", "-5e-324")]
    [InlineData("7fefffffffffffff", "1.7976931348623157e+308")]
    [InlineData("ffefffffffffffff", "-1.7976931348623157e+308")]
    [InlineData("4340000000000000", "9007199254740992")]
    [InlineData("c340000000000000", "-9007199254740992")]
    [InlineData("4430000000000000", "295147905179352830000")]
    [InlineData("44b52d02c7e14af5", "9.999999999999997e+22")]
    [InlineData("44b52d02c7e14af6", "1e+23")]
    [InlineData("44b52d02c7e14af7", "1.0000000000000001e+23")]
    [InlineData("444b1ae4d6e2ef4e", "999999999999999700000")]
    [InlineData("444b1ae4d6e2ef4f", "999999999999999900000")]
    [InlineData("444b1ae4d6e2ef50", "1e+21")]
    [InlineData("3eb0c6f7a0b5ed8c", "9.999999999999997e-7")]
    [InlineData("3eb0c6f7a0b5ed8d", "0.000001")]
    [InlineData("41b3de4355555553", "333333333.3333332")]
    [InlineData("41b3de4355555554", "333333333.33333325")]
    [InlineData("41b3de4355555555", "333333333.3333333")]
    [InlineData("41b3de4355555556", "333333333.3333334")]
    [InlineData("41b3de4355555557", "333333333.33333343")]
    [InlineData("becbf647612f3696", "-0.0000033333333333333333")]
    [InlineData("43143ff3c1cb0959", "1424953923781206.2")]
    // Source: our reference sheet, G2-025 and G2-026.
    [InlineData("4340000000000001", "9007199254740994")]
    [InlineData("4340000000000002", "9007199254740996")]
    public void The_table_of_the_standard_is_met(string ieee754, string expected)
    {
        var value = BitConverter.UInt64BitsToDouble(ulong.Parse(ieee754, NumberStyles.HexNumber, CultureInfo.InvariantCulture));

        Assert.Equal(expected, EcmaScriptNumber.Format(value));
    }

    // Source: Node.js, String(number). Here .NET's own shortest form ("R") drops a digit and reads back as the neighbour.
    [Theory]
    [InlineData("3e60000000000000", "2.9802322387695312e-8")]
    [InlineData("0410000000000000", "4.1045368012983762e-289")]
    // ... and here the interval is lopsided too, but the shorter form is right.
    [InlineData("3d30000000000000", "5.684341886080802e-14")]
    public void Powers_of_two_keep_every_digit_they_need(string ieee754, string expected) =>
        The_table_of_the_standard_is_met(ieee754, expected);

    [Fact]
    public void Every_power_of_two_and_its_neighbours_read_back_to_themselves()
    {
        for (var exponent = -1074; exponent <= 1023; exponent++)
        {
            var power = Math.ScaleB(1, exponent);
            foreach (var value in (double[])[power, Math.BitIncrement(power), Math.BitDecrement(power)])
                Assert.Equal(value, double.Parse(EcmaScriptNumber.Format(value), CultureInfo.InvariantCulture));
        }
    }

    // Source: RFC 8785, appendix B: NaN and Infinity are errors.
    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void What_is_not_finite_is_refused(double value) => Assert.Throws<CanonicalJsonException>(() => EcmaScriptNumber.Format(value));

    [Fact]
    public void Every_finite_double_reads_back_to_itself() =>
        Gen
            .Double.Where(double.IsFinite)
            .Sample(value => double.Parse(EcmaScriptNumber.Format(value), CultureInfo.InvariantCulture) == value);

    [Fact]
    public void Plain_notation_ends_exactly_where_the_standard_says()
    {
        Assert.Equal("100000000000000000000", EcmaScriptNumber.Format(1e20));
        Assert.Equal("1e+21", EcmaScriptNumber.Format(1e21));
        Assert.Equal("0.000001", EcmaScriptNumber.Format(1e-6));
        Assert.Equal("1e-7", EcmaScriptNumber.Format(1e-7));
        Assert.Equal("1.5e-7", EcmaScriptNumber.Format(1.5e-7));
        Assert.Equal("-12.5", EcmaScriptNumber.Format(-12.50));
        Assert.Equal("1200", EcmaScriptNumber.Format(1200));
    }
}
