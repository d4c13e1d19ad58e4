using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Domain.Gates;

/// <summary>Whether an instrument may be used.</summary>
public enum InstrumentState
{
    /// <summary>In calibration and, where it has a reference, proved today.</summary>
    Usable,

    /// <summary>Its calibration or today's check is due.</summary>
    Due,

    /// <summary>Stopped by a hold, or found out of tolerance.</summary>
    Held,

    /// <summary>Retired: kept for its past, used no more.</summary>
    Retired,
}

/// <summary>An instrument with its calibrations, checks and open holds.</summary>
public sealed record InstrumentStanding(
    Instrument Instrument,
    IReadOnlyList<Calibration> Calibrations,
    IReadOnlyList<InstrumentCheck> Checks,
    IReadOnlyList<Hold> OpenHolds
)
{
    /// <summary>The decision that retired it; null while it is in use.</summary>
    public SetupDecision? Retired { get; init; }

    /// <summary>Holds on it that were lifted again.</summary>
    public IReadOnlyList<Hold> LiftedHolds { get; init; } = [];

    /// <summary>The latest calibration made on or before <paramref name="day"/>, good or bad, due or not.</summary>
    public Calibration? LatestCalibration(DateOnly day) =>
        Calibrations.Where(c => c.CalibratedOn <= day).OrderBy(c => c.CalibratedOn).ThenBy(c => c.RecordedAt).LastOrDefault();

    /// <summary>The calibration in force on <paramref name="day"/>, or null when it ran out, failed or never was.</summary>
    public Calibration? InForce(DateOnly day) => LatestCalibration(day) is { Passed: true } c && c.DueOn >= day ? c : null;

    /// <summary>The latest check made on <paramref name="day"/>, by the workshop's calendar.</summary>
    public InstrumentCheck? CheckOn(DateOnly day, WorkshopCalendar calendar) =>
        Checks.Where(c => calendar.DayOf(c.OccurredAt) == day).OrderBy(c => c.OccurredAt).LastOrDefault();

    /// <summary>The one word shown in lists.</summary>
    public InstrumentState StateOn(DateOnly day, WorkshopCalendar calendar) =>
        Retired is not null ? InstrumentState.Retired
        : OpenHolds.Count > 0 || LatestCalibration(day) is { Passed: false } || CheckOn(day, calendar) is { Passed: false }
            ? InstrumentState.Held
        : InForce(day) is null || (Instrument.CheckNominal is not null && CheckOn(day, calendar) is null) ? InstrumentState.Due
        : InstrumentState.Usable;
}
