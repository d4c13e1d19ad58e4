using System.Globalization;

namespace Traceability.Domain.Values;

/// <summary>Weeks as ISO 8601 counts them: from Monday, the first being that of the year's first Thursday.</summary>
public static class IsoWeek
{
    /// <summary>"2026-W01" for 1 January 2026.</summary>
    public static string Of(DateTime day) =>
        string.Create(CultureInfo.InvariantCulture, $"{ISOWeek.GetYear(day)}-W{ISOWeek.GetWeekOfYear(day):00}");
}
