namespace Traceability.Domain.Records;

/// <summary>
/// A measuring instrument or cabinet. When <c>CheckNominal</c> is set, it is proved against a reference of that value
/// (a reference resistor, a reference microphone) and the reading may differ by <c>CheckTolerance</c> at most.
/// </summary>
public sealed record Instrument(
    Guid Id,
    string Code,
    string Kind,
    string Title,
    decimal? CheckNominal,
    decimal? CheckTolerance,
    string? CheckUnit,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>An instrument was calibrated. A failed calibration means that it was found out of tolerance.</summary>
public sealed record Calibration(
    Guid Id,
    Guid InstrumentId,
    DateOnly CalibratedOn,
    DateOnly DueOn,
    string Reference,
    bool Passed,
    string? Note,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt)
{
    /// <summary>What the calibration found, by name from <see cref="CalibrationConstants"/>; null when it states none.</summary>
    public Dictionary<string, decimal>? Constants { get; init; }

    /// <summary>The calibration that was entered wrong and that this one takes the place of; null when it is one of its own.</summary>
    public Guid? Replaces { get; init; }

    /// <summary>Why the other was wrong.</summary>
    public string? ReplacesBecause { get; init; }
}

/// <summary>What may be decided on a part whose measurements were taken with an instrument in doubt.</summary>
public enum DoubtDecisionKind
{
    /// <summary>
    /// The measurement stands, for a reason that is said: the error was small against the limits, or another measurement confirms it.
    /// </summary>
    Accepted,

    /// <summary>The part is put on hold. The doubt stays: a hold says nothing of a measurement.</summary>
    Held,

    /// <summary>The stage and all later ones are done again.</summary>
    Remeasure,
}

/// <summary>
/// The quality lead decided on what was measured on a part with an instrument in doubt. <c>ReturnTo</c> names the stage from which on
/// passes no longer count, when it is to be measured again.
/// </summary>
public sealed record DoubtDecision(
    Guid Id,
    Guid PartId,
    Guid InstrumentId,
    DoubtDecisionKind Kind,
    string? ReturnTo,
    string Reason,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>
/// The constants that a calibration may state, with their units in their names. Methods take them before the route's numbers.
/// </summary>
public static class CalibrationConstants
{
    /// <summary>Name and meaning.</summary>
    public static readonly IReadOnlyDictionary<string, string> All = new Dictionary<string, string>
    {
        ["airLoadCoefficient"] = "coefficient of the air that moves with the film in this fixture, without unit (0 to 3)",
        ["seriesResistanceMohm"] = "protection resistor in series with the part, MOhm",
        ["fixtureResistanceGohm"] = "resistance of the empty fixture, GOhm",
        ["currentFloorPicoampere"] = "smallest current that the tester tells from none, pA",
        ["referenceSensitivityMvPa"] = "sensitivity of the reference microphone at 1 kHz, mV/Pa",
        ["referenceTemperatureDbPerK"] =
            "change of the reference microphone's sensitivity with temperature, dB/K against 23 °C; of either sign",
        ["referencePressureDbPerKpa"] =
            "change of the reference microphone's sensitivity with static pressure, dB/kPa against 101.325 kPa; of either sign",
        ["strayCapacitancePf"] = "capacitance of leads and fixture, pF",
    };

    /// <summary>Those that may be below zero.</summary>
    public static readonly IReadOnlySet<string> OfEitherSign = new HashSet<string>
    {
        "referenceTemperatureDbPerK",
        "referencePressureDbPerKpa",
    };
}

/// <summary>An instrument was proved against its reference on the day.</summary>
public sealed record InstrumentCheck(
    Guid Id,
    Guid InstrumentId,
    decimal? Nominal,
    decimal? Value,
    bool Passed,
    string? Note,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt)
{
    /// <summary>The check that was entered wrong and that this one takes the place of; null when it is one of its own.</summary>
    public Guid? Replaces { get; init; }

    /// <summary>Why the other was wrong.</summary>
    public string? ReplacesBecause { get; init; }
}
