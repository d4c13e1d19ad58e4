namespace Traceability.Domain.Routes;

/// <summary>
/// What a stage's method reads from the route file. A closed set, so that a misspelt key is an error when the route is read
/// and not a surprise at the bench.
/// </summary>
public sealed record StageParameters
{
    /// <summary>A stage whose method needs none.</summary>
    public static readonly StageParameters None = new();

    /// <summary>Where the tolerances of the soak come from: a standard with its edition, or the workshop's own procedure.</summary>
    public string? ToleranceSource { get; init; }

    /// <summary>The phases of a climate soak, in order.</summary>
    public IReadOnlyList<SoakPhaseParameters>? Phases { get; init; }

    /// <summary>The tolerance mask of a response, in dB relative to the level at 1 kHz, by rising frequency.</summary>
    public IReadOnlyList<MaskCorner>? Mask { get; init; }

    /// <summary>The model's reference curve, which the mask lies around, by rising frequency; null = a flat line.</summary>
    public IReadOnlyList<CurvePoint>? ReferenceCurve { get; init; }

    /// <summary>Names of the response evidence that the mask judges; null = every response of the stage.</summary>
    public IReadOnlyList<string>? MaskedEvidence { get; init; }

    /// <summary>Between what the voltages of an electrical test are put; null when the route does not say.</summary>
    public IReadOnlyList<TestConnection>? Terminals { get; init; }

    /// <summary>Further numbers by name, e.g. <c>filmRadiusMm</c>, each known to the method that asks for it.</summary>
    public IReadOnlyDictionary<string, decimal> Numbers { get; init; } = new Dictionary<string, decimal>();
}

/// <summary>
/// One phase of a soak: set points with tolerances (kelvin, percent relative humidity) and the least dwell inside them, in minutes.
/// </summary>
/// <param name="Name" example="damp heat">What the phase is called.</param>
/// <param name="TemperatureC" example="40">Set temperature, °C.</param>
/// <param name="TemperatureToleranceK" example="2">How far the temperature may be from it, K.</param>
/// <param name="HumidityPct" example="93">Set relative humidity, %; null when it is not set.</param>
/// <param name="HumidityTolerancePct" example="3">How far the humidity may be from it, % relative humidity.</param>
/// <param name="MinDwellMinutes" example="240">Least time inside the tolerances, min.</param>
/// <param name="MaxRampKPerMinute" example="1">Fastest allowed change of temperature, K/min; null when it is not judged.</param>
/// <param name="MaxGapMinutes" example="5">Longest step between two lines of the log, min; null when it is not judged.</param>
public sealed record SoakPhaseParameters(
    string Name,
    decimal TemperatureC,
    decimal TemperatureToleranceK,
    decimal? HumidityPct,
    decimal? HumidityTolerancePct,
    int MinDwellMinutes,
    decimal? MaxRampKPerMinute,
    int? MaxGapMinutes
)
{
    /// <summary>
    /// Time constant, min, with which the part follows the air: for stabilisation and condensation. Null = the air alone is looked at.
    /// </summary>
    /// <example>5</example>
    public decimal? PartTimeConstantMinutes { get; init; }

    /// <summary>Averaging window of the ramp, min; null = 5.</summary>
    /// <example>5</example>
    public decimal? RampWindowMinutes { get; init; }

    /// <summary>True when time outside tolerance is taken off the dwell instead of restarting it.</summary>
    /// <example>false</example>
    public bool ExcursionsAreSubtracted { get; init; }

    /// <summary>True when water condensing on the part fails the phase; false when it is only stated.</summary>
    /// <example>true</example>
    public bool MustStayDry { get; init; }
}

/// <summary>A point of a reference curve: frequency in hertz, level in dB.</summary>
/// <param name="FrequencyHz" example="1000">Frequency, Hz.</param>
/// <param name="LevelDb" example="0">Level, dB.</param>
public sealed record CurvePoint(decimal FrequencyHz, decimal LevelDb);

/// <summary>A corner of a mask: frequency in hertz, lower and upper level in dB.</summary>
/// <param name="FrequencyHz" example="1000">Frequency, Hz.</param>
/// <param name="LowerDb" example="-2">The least level there, dB.</param>
/// <param name="UpperDb" example="2">The greatest level there, dB.</param>
public sealed record MaskCorner(decimal FrequencyHz, decimal LowerDb, decimal UpperDb);

/// <summary>
/// Between what a test voltage is put: everything in <c>Tied</c> is connected together, and so is everything in <c>Against</c>.
/// </summary>
/// <param name="Voltage" example="testVoltageV">The characteristic that holds the voltage.</param>
/// <param name="Tied">Terminals at one pole; words of <see cref="TestTerminals"/>.</param>
/// <param name="Against">Terminals at the other.</param>
public sealed record TestConnection(string Voltage, IReadOnlyList<string> Tied, IReadOnlyList<string> Against);
