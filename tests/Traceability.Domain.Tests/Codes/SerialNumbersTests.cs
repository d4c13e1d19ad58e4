using CsCheck;
using Traceability.Domain.Codes;

namespace Traceability.Domain.Tests.Codes;

public class SerialNumbersTests
{
    [Fact]
    public void A_serial_is_kind_year_and_running_number()
    {
        Assert.Equal("D26-00017", SerialNumbers.Propose("D", 2026, 17));
        Assert.Equal("CAP09-99999", SerialNumbers.Propose("cap", 2009, 99_999));
    }

    [Fact]
    public void The_order_of_the_text_is_the_order_of_time() =>
        Gen.Select(Gen.Int[2000, 2099], Gen.Int[1, 99_999], Gen.Int[2000, 2099], Gen.Int[1, 99_999])
            .Sample(
                (year, count, otherYear, otherCount) =>
                    Math.Sign(
                        string.CompareOrdinal(SerialNumbers.Propose("D", year, count), SerialNumbers.Propose("D", otherYear, otherCount))
                    ) == Math.Sign((year, count).CompareTo((otherYear, otherCount)))
            );

    [Fact]
    public void A_proposed_serial_may_be_printed() =>
        Assert.IsType<CodeReading.Good>(PrintedCode.Read(PrintedCode.For(CodeKind.Part, SerialNumbers.Propose("D", 2026, 1)).Text));

    [Theory]
    [InlineData("", 2026, 1)]
    [InlineData("ABCD", 2026, 1)]
    [InlineData("D1", 2026, 1)]
    [InlineData("D", 1999, 1)]
    [InlineData("D", 2100, 1)]
    [InlineData("D", 2026, 0)]
    [InlineData("D", 2026, 100_000)]
    public void What_would_break_the_order_is_refused(string letters, int year, int count) =>
        Assert.ThrowsAny<ArgumentException>(() => SerialNumbers.Propose(letters, year, count));
}
