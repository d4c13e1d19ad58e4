using Traceability.Domain.Values;

namespace Traceability.Domain.Tests.Values;

public sealed class DayTextTests
{
    [Theory]
    [InlineData("2026-11-29")]
    [InlineData("29 Nov 2026")]
    [InlineData(" 29  november 2026 ")]
    public void A_day_is_read_as_ISO_or_with_the_month_by_name(string typed)
    {
        Assert.True(DayText.TryRead(typed, out var day, out var problem), problem);
        Assert.Equal(new DateOnly(2026, 11, 29), day);
    }

    /// <summary>3/4/2026 is the third of April or the fourth of March; nobody can tell.</summary>
    [Theory]
    [InlineData("3/4/2026")]
    [InlineData("03.04.2026")]
    [InlineData("29 Nov 26")]
    [InlineData("30 Feb 2026")]
    [InlineData("2026-11-31")]
    [InlineData("0026-11-29")]
    [InlineData("")]
    [InlineData(null)]
    public void A_day_that_may_be_another_or_none_is_refused_with_the_way_to_type_it(string? typed)
    {
        Assert.False(DayText.TryRead(typed, out _, out var problem));
        Assert.Contains("29 Nov 2026", problem, StringComparison.Ordinal);
    }
}
