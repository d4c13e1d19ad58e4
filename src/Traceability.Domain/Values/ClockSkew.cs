namespace Traceability.Domain.Values;

/// <summary>Clocks of benches and instruments differ a little from the server's.</summary>
public static class ClockSkew
{
    /// <summary>How far a stated time may be off without being taken for another time: two minutes; common practice, no source.</summary>
    public static readonly TimeSpan Allowed = TimeSpan.FromMinutes(2);
}
