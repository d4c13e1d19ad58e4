using Traceability.Domain.Values;

namespace Traceability.Domain.Tests.Values;

/// <summary>Weeks of ISO 8601 around the turn of a year: worked out from its rule that week 1 holds the first Thursday.</summary>
public class IsoWeekTests
{
    [Theory]
    [InlineData("2026-01-01", "2026-W01")]
    [InlineData("2025-12-28", "2025-W52")]
    [InlineData("2025-12-29", "2026-W01")]
    [InlineData("2027-01-03", "2026-W53")]
    [InlineData("2027-01-04", "2027-W01")]
    public void A_week_belongs_to_the_year_of_its_thursday(string day, string week) =>
        Assert.Equal(week, IsoWeek.Of(DateTime.Parse(day, System.Globalization.CultureInfo.InvariantCulture)));
}
