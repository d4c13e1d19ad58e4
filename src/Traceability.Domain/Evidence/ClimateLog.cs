namespace Traceability.Domain.Evidence;

/// <summary>One line of a climate logger.</summary>
/// <param name="At">When, in UTC.</param>
/// <param name="TemperatureC">Air temperature, degrees Celsius.</param>
/// <param name="HumidityPct">Relative humidity, per cent; nothing when the logger left the field empty.</param>
public readonly record struct ClimateLogRow(DateTimeOffset At, double TemperatureC, double? HumidityPct);

/// <summary>A stretch without readings that is much longer than the logger's usual interval.</summary>
/// <param name="Line">The line after the gap.</param>
/// <param name="From">The last reading before it.</param>
/// <param name="To">The first reading after it.</param>
public sealed record LogGap(int Line, DateTimeOffset From, DateTimeOffset To);

/// <summary>A climate log whose times strictly rise.</summary>
/// <param name="Rows">The readings in the order of time; at least two.</param>
/// <param name="UsualInterval">The median time from one reading to the next.</param>
/// <param name="Gaps">Where the log proves nothing; to be judged by the stage, not by the reader.</param>
/// <param name="ZoneAssumed">Whether the times were written without a zone and taken as UTC.</param>
public sealed record ClimateLog(IReadOnlyList<ClimateLogRow> Rows, TimeSpan UsualInterval, IReadOnlyList<LogGap> Gaps, bool ZoneAssumed);
