namespace Traceability.Domain.Values;

/// <summary>The workshop's time zone: what day a moment falls on, and how times are said to people.</summary>
public sealed record WorkshopCalendar(TimeZoneInfo Zone)
{
    /// <summary>A workshop on universal time.</summary>
    public static readonly WorkshopCalendar Utc = new(TimeZoneInfo.Utc);

    /// <summary>The workshop's calendar day of a moment.</summary>
    public DateOnly DayOf(DateTimeOffset moment) => DateOnly.FromDateTime(Local(moment).DateTime);

    /// <summary>The moment at which a workshop's day begins; UTC.</summary>
    public DateTimeOffset StartOf(DateOnly day)
    {
        var midnight = day.ToDateTime(TimeOnly.MinValue);
        return new DateTimeOffset(midnight, Zone.GetUtcOffset(midnight)).ToUniversalTime();
    }

    /// <summary>Noon of a workshop's day, for what is known by its day alone; UTC.</summary>
    public DateTimeOffset NoonOf(DateOnly day)
    {
        var noon = day.ToDateTime(new TimeOnly(12, 0));
        return new DateTimeOffset(noon, Zone.GetUtcOffset(noon)).ToUniversalTime();
    }

    /// <summary>The last microsecond of a workshop's day, the finest step that is kept; UTC. 31 Dec 9999 ends at its beginning.</summary>
    public DateTimeOffset EndOf(DateOnly day) => day == DateOnly.MaxValue ? StartOf(day) : StartOf(day.AddDays(1)).AddTicks(-10);

    /// <summary>The moment on the workshop's wall clock.</summary>
    public DateTimeOffset Local(DateTimeOffset moment) => TimeZoneInfo.ConvertTime(moment, Zone);

    /// <summary>Unambiguous words for a day: "25 Nov 2026".</summary>
    public static string Say(DateOnly day) => day.ToString("d MMM yyyy", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Words for what leaves the workshop, where nobody knows its clock: "25 Nov 2026, 14:20 UTC+1".</summary>
    public string SayWithZone(DateTimeOffset moment) => WithZone(Local(moment));

    /// <summary>The same of a moment that carries the workshop's offset already.</summary>
    public static string WithZone(DateTimeOffset local) =>
        $"{local.ToString("d MMM yyyy, HH:mm", System.Globalization.CultureInfo.InvariantCulture)} {ZoneOf(local.Offset)}";

    /// <summary>Unambiguous words for a moment: "25 Nov 2026, 14:20".</summary>
    public string Say(DateTimeOffset moment) =>
        Local(moment).ToString("d MMM yyyy, HH:mm", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>"UTC", "UTC+1", "UTC\u22123:30".</summary>
    private static string ZoneOf(TimeSpan offset)
    {
        var sign = offset < TimeSpan.Zero ? '\u2212' : '+';
        var minutes = offset.Minutes == 0 ? "" : $":{Math.Abs(offset.Minutes):00}";
        return offset == TimeSpan.Zero ? "UTC" : $"UTC{sign}{Math.Abs(offset.Hours)}{minutes}";
    }
}
