namespace Traceability.Domain.Certificates;

/// <summary>The values that count for one stage of one part: those of the attempt that passed and still stands.</summary>
/// <param name="PartSerial">Serial of the part that was measured.</param>
/// <param name="PartKind">Kind of that part in words.</param>
/// <param name="StageTitle">Title of the stage.</param>
/// <param name="ClosedAt">When the attempt was closed.</param>
/// <param name="Values">Readings, entered and computed, in the order of the route.</param>
public sealed record MeasuredStage(
    string PartSerial,
    string PartKind,
    string StageTitle,
    DateTimeOffset ClosedAt,
    IReadOnlyList<MeasuredValue> Values
);

/// <summary>One characteristic as it was measured, with the limits that judged it.</summary>
/// <param name="Label">Name of the characteristic in words.</param>
/// <param name="Value">The value with the digits that were entered ("12.50" stays "12.50"), or a word such as "yes".</param>
/// <param name="Unit">Unit, null for a count or a word.</param>
/// <param name="Lower">Lower limit, in the unit of the value.</param>
/// <param name="Upper">Upper limit, in the unit of the value.</param>
/// <param name="Nominal">Nominal value, in the unit of the value.</param>
/// <param name="Verdict">The verdict in a word: "within", "outside, conceded", "for information".</param>
/// <param name="Uncertainty">Expanded uncertainty in words with its coverage factor, such as "± 0.3 dB (k = 2)".</param>
/// <param name="CorrectedNote">Set when the value takes the place of an earlier entry: who corrected it, when, from what, why.</param>
public sealed record MeasuredValue(
    string Label,
    string Value,
    string? Unit = null,
    decimal? Lower = null,
    decimal? Upper = null,
    decimal? Nominal = null,
    string Verdict = "",
    string? Uncertainty = null,
    string? CorrectedNote = null
);

/// <summary>What the final acoustic test found in one directional pattern.</summary>
/// <param name="Pattern">Name of the pattern: "cardioid", "figure of eight".</param>
/// <param name="Values">Sensitivity, noise, front-to-back ratio and whatever else the route asks for.</param>
public sealed record PatternResult(string Pattern, IReadOnlyList<MeasuredValue> Values);
