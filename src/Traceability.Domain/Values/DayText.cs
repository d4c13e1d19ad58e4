using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Traceability.Domain.Values;

/// <summary>A day as people type it: 2026-11-29, 29 Nov 2026 or 29 November 2026.</summary>
/// <remarks>
/// ISO 8601 (calendar date, extended form), or day, English month name and four-digit year. Refused: 29/11/2026 and its like, for day and
/// month may stand either way round; years of two digits or outside 1900 to 2199; days that do not exist. Checked by <c>DayTextTests</c>.
/// </remarks>
public static class DayText
{
    private static readonly string[] Forms = ["yyyy-MM-dd", "d MMM yyyy", "d MMMM yyyy"];

    /// <summary>Reads a day, or says what to type instead.</summary>
    public static bool TryRead(string? text, out DateOnly day, [NotNullWhen(false)] out string? problem)
    {
        var typed = (text ?? "").Trim();
        problem =
            DateOnly.TryParseExact(typed, Forms, CultureInfo.InvariantCulture, DateTimeStyles.AllowInnerWhite, out day)
            && day.Year is >= 1900 and < 2200
                ? null
                : NumberTexts.IsNotADay(typed.Length > 40 ? typed[..40] + "..." : typed);
        return problem is null;
    }
}
