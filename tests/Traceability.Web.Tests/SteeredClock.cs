namespace Traceability.Web.Tests;

/// <summary>A clock that runs, and that a test may put forward so that a cure or a window passes while nobody waits.</summary>
public sealed class SteeredClock(TimeSpan ahead = default) : TimeProvider
{
    /// <summary>
    /// From now to six in the morning, of tomorrow. Begun in the evening, the hours that tests put a clock forward would pass midnight, and
    /// what was checked today would be unchecked in the middle of a test; tomorrow, because cookies must not end before they begin. One for
    /// all tests of a run: workshops are copies of one.
    /// </summary>
    public static readonly TimeSpan ToMorning = DateTime.UtcNow.Date.AddHours(24 + 6) - DateTime.UtcNow;

    private TimeSpan ahead = ahead;

    public override DateTimeOffset GetUtcNow() => base.GetUtcNow() + ahead;

    public void Pass(TimeSpan time) => ahead += time;
}
