namespace Traceability.Domain.Quality.GaugeStudy;

/// <summary>One reading of a gauge study: a part measured by a person, not knowing which part or what was read before.</summary>
/// <param name="Part">Which part.</param>
/// <param name="Appraiser">Who measured.</param>
/// <param name="Value">What was read.</param>
public readonly record struct GaugeReading(string Part, string Appraiser, double Value);
