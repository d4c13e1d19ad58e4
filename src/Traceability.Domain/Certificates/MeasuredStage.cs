namespace Traceability.Domain.Certificates;

/// <summary>The values that count for one stage of one part: those of the attempt that passed and still stands.</summary>
/// <param name="PartSerial" example="CD-0071">Serial of the part that was measured.</param>
/// <param name="PartKind" example="capsule, dual diaphragm">Kind of that part in words.</param>
/// <param name="StageTitle" example="Insulation">Title of the stage.</param>
/// <param name="ClosedAt" example="2026-01-31T14:20:00+01:00">When the attempt was closed.</param>
/// <param name="Values">Readings, entered and computed, in the order of the route.</param>
public sealed record MeasuredStage(
    string PartSerial,
    string PartKind,
    string StageTitle,
    DateTimeOffset ClosedAt,
    IReadOnlyList<MeasuredValue> Values
);

/// <summary>One characteristic as it was measured, with the limits that judged it.</summary>
/// <param name="Label" example="Insulation resistance">Name of the characteristic in words.</param>
/// <param name="Value" example="412.50">
/// The value with the digits that were entered ("12.50" stays "12.50"), or a word such as "yes".
/// </param>
/// <param name="Unit" example="GOhm">Unit, null for a count or a word.</param>
/// <param name="Lower" example="400">Lower limit, in the unit of the value.</param>
/// <param name="Upper" example="5000">Upper limit, in the unit of the value.</param>
/// <param name="Nominal" example="1000">Nominal value, in the unit of the value.</param>
/// <param name="Verdict" example="within">The verdict in a word: "within", "outside, conceded", "for information".</param>
/// <param name="Uncertainty" example="± 0.3 dB (k = 2)">
/// Expanded uncertainty in words with its coverage factor, such as "± 0.3 dB (k = 2)".
/// </param>
/// <param name="CorrectedNote" example="corrected by Builder 2 on 30 Jan 2026, 11:05, from 41.25: comma misplaced">
/// Set when the value takes the place of an earlier entry: who corrected it, when, from what, why.
/// </param>
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
/// <param name="Pattern" example="cardioid">Name of the pattern: "cardioid", "figure of eight".</param>
/// <param name="Values">Sensitivity, noise, front-to-back ratio and whatever else the route asks for.</param>
public sealed record PatternResult(string Pattern, IReadOnlyList<MeasuredValue> Values);
