using Traceability.Domain.Values;

namespace Traceability.Domain.Tests.Values;

public class UnitsTests
{
    [Fact]
    public void A_unit_is_found_by_its_code_and_printed_by_its_symbol()
    {
        Assert.True(Units.TryFind("GOhm", out var unit, out _));
        Assert.Equal("GΩ", unit.Symbol);
    }

    [Fact]
    public void Every_code_is_typed_with_plain_letters_and_stands_once()
    {
        Assert.Equal(Units.All.Count, Units.All.DistinctBy(unit => unit.Code).Count());
        Assert.All(Units.All, unit => Assert.Matches("^[A-Za-z/0-9]+$", unit.Code));
    }

    [Theory]
    [InlineData("µm", "write um.")]
    [InlineData("°C", "write degC.")]
    [InlineData("hz", "write Hz.")]
    [InlineData("MV", "write mV.")]
    [InlineData("furlong", "Hz, kHz, N/m")]
    [InlineData("", "Hz, kHz, N/m")]
    [InlineData(null, "Hz, kHz, N/m")]
    public void An_unknown_unit_is_refused_with_the_one_meant_or_the_list(string? code, string advice)
    {
        Assert.False(Units.TryFind(code, out _, out var problem));
        Assert.Contains(advice, problem, StringComparison.Ordinal);
    }
}
