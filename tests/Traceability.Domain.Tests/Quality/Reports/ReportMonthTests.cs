using Traceability.Domain.Quality.Reports;
using Traceability.Domain.Records;
using static Traceability.Domain.Tests.Quality.Reports.AMonth;

namespace Traceability.Domain.Tests.Quality.Reports;

/// <summary>When a month begins and ends, and which can be reported.</summary>
public class ReportMonthTests
{
    [Fact]
    public void A_month_begins_and_ends_by_the_workshops_clock()
    {
        var month = ReportMonth.Read("2026-10", Drawn, Oslo).Month!;
        Assert.Equal((At(9, 30, 22), At(10, 31, 23)), (month.From, month.To));
        Assert.Equal(At(10, 31, 23), month.AsOf);
        Assert.False(month.SoFar);
    }

    [Theory]
    [InlineData(null, "say which month, such as month=2026-10")]
    [InlineData(" ", "say which month")]
    [InlineData("2026-13", "'2026-13' is not a month")]
    [InlineData("2026-1", "is not a month")]
    [InlineData("October 2026", "is not a month")]
    [InlineData("0001-01", "is not a month")]
    [InlineData("2026-12", "December 2026 has not begun; the latest month that can be reported is 2026-11")]
    public void A_month_that_cannot_be_reported_is_refused_with_what_to_do(string? text, string because)
    {
        var (month, refusal) = ReportMonth.Read(text, Drawn, Oslo);
        Assert.Null(month);
        Assert.Contains(because, refusal!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_month_begins_when_the_workshop_says_so_not_when_Greenwich_does()
    {
        Assert.NotNull(ReportMonth.Read("2026-11", At(10, 31, 23), Oslo).Month);
        Assert.Null(ReportMonth.Read("2026-11", At(10, 31, 22), Oslo).Month);
    }
}
