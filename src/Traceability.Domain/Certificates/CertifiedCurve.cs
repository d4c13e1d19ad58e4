namespace Traceability.Domain.Certificates;

/// <summary>A picture of level against frequency: one or more traces and the mask that judged them.</summary>
/// <param name="Title" example="Response of US-0034, Final acoustic test">Title of the picture.</param>
/// <param name="Traces">The curves, most important first.</param>
/// <param name="Mask">Limits over frequency, ascending; empty when the curve was recorded for information.</param>
/// <param name="ReferenceConditions" example="on axis, 1 m, 94 dB SPL, 1/12 octave; 0 dB is the level at 1 kHz">
/// Conditions under which it was taken: angle, distance, level, smoothing, what 0 dB stands for.
/// </param>
public sealed record CertifiedCurve(
    string Title,
    IReadOnlyList<ResponseTrace> Traces,
    IReadOnlyList<CertifiedMaskPoint> Mask,
    string ReferenceConditions
);

/// <summary>One curve of a <see cref="CertifiedCurve"/>.</summary>
/// <param name="Name" example="front, 0°">Name of the curve, such as "front, 0°".</param>
/// <param name="Points">Points in ascending frequency.</param>
public sealed record ResponseTrace(string Name, IReadOnlyList<CertifiedPoint> Points);

/// <summary>A point of a frequency response.</summary>
/// <param name="FrequencyHz" example="1000">Frequency in hertz, above zero.</param>
/// <param name="LevelDb" example="0.4">Level in decibels; the reference is stated by the curve.</param>
public readonly record struct CertifiedPoint(double FrequencyHz, double LevelDb);

/// <summary>A corner of a mask; between corners the limits run straight over the logarithm of frequency.</summary>
/// <param name="FrequencyHz" example="1000">Frequency in hertz, above zero.</param>
/// <param name="LowerDb" example="-2">Lower limit in decibels; null where there is none.</param>
/// <param name="UpperDb" example="2">Upper limit in decibels; null where there is none.</param>
public readonly record struct CertifiedMaskPoint(double FrequencyHz, double? LowerDb, double? UpperDb);
