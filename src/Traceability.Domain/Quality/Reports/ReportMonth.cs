using System.Globalization;
using Traceability.Domain.Values;
using Traceability.Domain.Work;

namespace Traceability.Domain.Quality.Reports;

/// <summary>A calendar month of the workshop, as a report of it is asked for at some moment.</summary>
/// <param name="First">The first day of the month.</param>
/// <param name="From">Its beginning by the workshop's clock; UTC.</param>
/// <param name="To">The beginning of the next month; UTC.</param>
/// <param name="AsOf">Up to when the report speaks: the end of the month, or the moment it is drawn up when the month is not over;
/// UTC.</param>
public sealed record ReportMonth(DateOnly First, DateTimeOffset From, DateTimeOffset To, DateTimeOffset AsOf)
{
    private const string Format = "yyyy-MM";

    private const int Earliest = 1950;

    /// <summary>"2026-10".</summary>
    public string Code => CodeOf(First);

    /// <summary>"October 2026".</summary>
    public string Title => TitleOf(First);

    /// <summary>True when the month is not over: the report says "so far".</summary>
    public bool SoFar => AsOf < To;

    /// <summary>The first day of the month that lies some months before this one.</summary>
    public DateOnly FirstOf(int monthsBefore) => First.AddMonths(-monthsBefore);

    /// <summary>"2026-10" for any day of that month.</summary>
    public static string CodeOf(DateOnly day) => day.ToString(Format, CultureInfo.InvariantCulture);

    /// <summary>"October 2026" for any day of that month.</summary>
    public static string TitleOf(DateOnly day) => day.ToString("MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>The month asked for; refused when it cannot be read, or when it has not begun by the workshop's clock.</summary>
    /// <param name="text">Such as "2026-10".</param>
    /// <param name="now">The moment at which it is asked; UTC.</param>
    /// <param name="calendar">The workshop's time zone, which says when a month begins.</param>
    public static (ReportMonth? Month, Refusal? Refusal) Read(string? text, DateTimeOffset now, WorkshopCalendar calendar)
    {
        var today = calendar.DayOf(now);
        if (string.IsNullOrWhiteSpace(text))
        {
            return (null, Refusal.Invalid("month", $"say which month, such as month={CodeOf(today.AddMonths(-1))}"));
        }

        if (
            !DateOnly.TryParseExact(text.Trim(), Format, CultureInfo.InvariantCulture, DateTimeStyles.None, out var first)
            || first.Year is < Earliest or > 2199
        )
        {
            return (
                null,
                Refusal.Invalid(
                    "month",
                    $"'{Shown(text)}' is not a month: write the year and the month from 01 to 12, such as {CodeOf(today.AddMonths(-1))}"
                )
            );
        }

        return first > today
            ? (null, Refusal.Invalid("month", $"{TitleOf(first)} has not begun; the latest month that can be reported is {CodeOf(today)}"))
            : (Of(first, now, calendar), null);
    }

    private static ReportMonth Of(DateOnly first, DateTimeOffset now, WorkshopCalendar calendar)
    {
        var end = calendar.StartOf(first.AddMonths(1));
        return new(first, calendar.StartOf(first), end, now < end ? now : end);
    }

    private static string Shown(string text) => text.Length > 40 ? text[..40] : text;
}
