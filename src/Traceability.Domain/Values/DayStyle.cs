namespace Traceability.Domain.Values;

/// <summary>How days are written. Both can be read in one way only.</summary>
public enum DayStyle
{
    /// <summary>25 Nov 2026.</summary>
    DayMonthYear,

    /// <summary>2026-11-25 (ISO 8601).</summary>
    YearMonthDay,
}
