namespace Traceability.Domain.Gates;

/// <summary>How a part left use or the house: why it was scrapped, the latest time it went out.</summary>
public sealed record Exit(string? Scrapped, Departure? Departure)
{
    /// <summary>In the house and in use.</summary>
    public static readonly Exit None = new(null, null);
}

/// <summary>The latest time a unit left the workshop, and with what complaint it came back since; null when it is still out.</summary>
public sealed record Departure(DateTimeOffset At, string? CustomerReference, DateTimeOffset? ReturnedAt = null, string? Complaint = null);
