namespace Traceability.Domain.Quality.Reports;

/// <summary>
/// All that a monthly report says, before anything is drawn: the PDF, the page and the JSON are views of it.
/// </summary>
/// <remarks>
/// Times carry the workshop's own offset and are shown as they stand. Every section says how its figures were computed; every share
/// carries the numbers it rests on, or why it cannot be given. A section's <c>None</c> is the plain sentence for a month that holds nothing
/// of that sort.
/// </remarks>
public sealed record MonthlyReportDocument
{
    /// <summary>The workshop that reports.</summary>
    /// <example>Workshop of the example</example>
    public required string WorkshopName { get; init; }

    /// <summary>Set when the data are invented: printed on every page.</summary>
    /// <example>Invented data: no real microphone</example>
    public string? InventedDataNotice { get; init; }

    /// <summary>"2026-10".</summary>
    /// <example>2026-03</example>
    public required string Month { get; init; }

    /// <summary>"October 2026".</summary>
    /// <example>March 2026</example>
    public required string Title { get; init; }

    /// <summary>The beginning of the month by the workshop's clock.</summary>
    /// <example>2026-03-01T00:00:00+01:00</example>
    public required DateTimeOffset From { get; init; }

    /// <summary>Up to when the report speaks: the end of the month, or the moment it was drawn up.</summary>
    /// <example>2026-04-01T00:00:00+02:00</example>
    public required DateTimeOffset AsOf { get; init; }

    /// <summary>When the report was drawn up; what was followed, decided or corrected until then is in it.</summary>
    /// <example>2026-04-02T09:00:00+02:00</example>
    public required DateTimeOffset DrawnUpAt { get; init; }

    /// <summary>The workshop's time zone.</summary>
    /// <example>Europe/Berlin</example>
    public required string TimeZone { get; init; }

    /// <summary>Which time the report tells, in words; "so far, as of ..." when the month is not over.</summary>
    /// <example>1 Mar 2026 to 31 Mar 2026</example>
    public required string Period { get; init; }

    /// <summary>True when the month is not over.</summary>
    /// <example>false</example>
    public required bool SoFar { get; init; }

    /// <summary>A plain sentence when nothing at all happened in the month; otherwise null.</summary>
    /// <example>Nothing was recorded in March 2026.</example>
    public string? Nothing { get; init; }

    /// <summary>Units finished and shipped.</summary>
    public required OutputSection Output { get; init; }

    /// <summary>Yields by model and stage.</summary>
    public required YieldSection Yields { get; init; }

    /// <summary>Film lots.</summary>
    public required FilmLotSection FilmLots { get; init; }

    /// <summary>What failed most often.</summary>
    public required FailureSection Failures { get; init; }

    /// <summary>Open nonconformities.</summary>
    public required WaitingSection Waiting { get; init; }

    /// <summary>Holds in force.</summary>
    public required HoldSection Holds { get; init; }

    /// <summary>Returns.</summary>
    public required ReturnSection Returns { get; init; }

    /// <summary>Yield over twelve months.</summary>
    public required TrendSection Trend { get; init; }

    /// <summary>Control charts.</summary>
    public required ControlSection Control { get; init; }

    /// <summary>Instruments that are due.</summary>
    public required InstrumentSection Instruments { get; init; }
}
