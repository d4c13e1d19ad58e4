using Traceability.Domain.Work;

namespace Traceability.Domain.Tests.Work;

public class ServerClockTests
{
    private static readonly DateTimeOffset Newest = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);

    [Theory]
    [InlineData(-61, true)]
    [InlineData(-60, false)]
    [InlineData(0, false)]
    [InlineData(3600, false)]
    public void Nothing_is_written_while_the_clock_is_more_than_a_minute_behind_the_newest_record(int seconds, bool refused)
    {
        var refusal = ServerClock.Behind(Newest.AddSeconds(seconds), Newest);

        Assert.Equal(refused ? RefusalKind.Unavailable : null, refusal?.Kind);
        Assert.Equal(refused ? RefusalCode.CannotRecordNow : null, refusal?.Code);
    }

    [Fact]
    public void An_empty_store_has_no_clock_to_be_behind() => Assert.Null(ServerClock.Behind(Newest, null));
}
