using Traceability.Domain.Values;

namespace Traceability.Domain.Tests.Values;

public sealed class WorkshopCalendarTests
{
    [Theory]
    [InlineData(0, 0, "25 Nov 2026, 14:20 UTC")]
    [InlineData(1, 0, "25 Nov 2026, 15:20 UTC+1")]
    [InlineData(5, 45, "25 Nov 2026, 20:05 UTC+5:45")]
    [InlineData(-3, -30, "25 Nov 2026, 10:50 UTC\u22123:30")]
    public void A_moment_that_leaves_the_workshop_carries_its_zone(int hours, int minutes, string said)
    {
        var offset = new TimeSpan(hours, minutes, 0);
        var calendar = new WorkshopCalendar(TimeZoneInfo.CreateCustomTimeZone("workshop", offset, "workshop", "workshop"));

        Assert.Equal(said, calendar.SayWithZone(new DateTimeOffset(2026, 11, 25, 14, 20, 0, TimeSpan.Zero)));
    }

    [Fact]
    public void Summer_and_winter_are_said_with_their_own_offsets()
    {
        var rule = TimeZoneInfo.AdjustmentRule.CreateAdjustmentRule(
            DateTime.MinValue.Date,
            DateTime.MaxValue.Date,
            TimeSpan.FromHours(1),
            TimeZoneInfo.TransitionTime.CreateFixedDateRule(new(1, 1, 1, 2, 0, 0), 3, 29),
            TimeZoneInfo.TransitionTime.CreateFixedDateRule(new(1, 1, 1, 3, 0, 0), 10, 25)
        );
        var calendar = new WorkshopCalendar(
            TimeZoneInfo.CreateCustomTimeZone("workshop", TimeSpan.FromHours(1), "workshop", "winter", "summer", [rule])
        );

        Assert.Equal("1 Jul 2026, 12:00 UTC+2", calendar.SayWithZone(new DateTimeOffset(2026, 7, 1, 10, 0, 0, TimeSpan.Zero)));
        Assert.Equal("1 Dec 2026, 11:00 UTC+1", calendar.SayWithZone(new DateTimeOffset(2026, 12, 1, 10, 0, 0, TimeSpan.Zero)));
    }
}
