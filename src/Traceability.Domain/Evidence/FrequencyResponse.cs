namespace Traceability.Domain.Evidence;

/// <summary>One point of a measured response.</summary>
/// <param name="FrequencyHz">Frequency, Hz.</param>
/// <param name="LevelDb">Level, dB; what it is relative to is for the stage to know.</param>
public readonly record struct MeasuredLevel(double FrequencyHz, double LevelDb);

/// <summary>A measured response: at least three points whose frequencies strictly rise.</summary>
public sealed record FrequencyResponse(IReadOnlyList<MeasuredLevel> Points);
