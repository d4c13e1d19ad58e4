using Traceability.Domain.Values;

namespace Traceability.Domain.Gates;

/// <summary>The moment and the circumstances in which a gate is asked.</summary>
/// <param name="At">The moment at which the work starts or ends; UTC.</param>
/// <param name="Calendar">The workshop's calendar, which says what day a moment falls on.</param>
public sealed record GateContext(DateTimeOffset At, WorkshopCalendar Calendar)
{
    /// <summary>The workshop's day of that moment.</summary>
    public DateOnly Day => Calendar.DayOf(At);

    /// <summary>Who wants to work; null when the gate is only looked at.</summary>
    public Actor? Actor { get; init; }

    /// <summary>The instruments named; null when none were asked for yet.</summary>
    public IReadOnlyList<InstrumentStanding>? Instruments { get; init; }

    /// <summary>Everything fitted in the part by the end of the work, by position; for methods that look inside.</summary>
    public IReadOnlyDictionary<string, Input> Inside { get; init; } = new Dictionary<string, Input>();

    /// <summary>The named constants of the calibrations of the instruments in use, by calibration.</summary>
    public IReadOnlyDictionary<Guid, IReadOnlyDictionary<string, decimal>> CalibrationConstants { get; init; } =
        new Dictionary<Guid, IReadOnlyDictionary<string, decimal>>();

    /// <summary>What is fitted, and about to be fitted, by position; null when the work is only being opened.</summary>
    public IReadOnlyDictionary<string, Input>? Inputs { get; init; }
}
