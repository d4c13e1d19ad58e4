namespace Traceability.Web.Tests;

/// <summary>The real clock, which a test may put forward so that a cure or a window passes while nobody waits.</summary>
public sealed class SteeredClock : TimeProvider
{
    private TimeSpan ahead;

    public override DateTimeOffset GetUtcNow() => base.GetUtcNow() + ahead;

    public void Pass(TimeSpan time) => ahead += time;
}
