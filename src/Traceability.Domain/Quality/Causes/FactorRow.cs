namespace Traceability.Domain.Quality.Causes;

/// <summary>One part at one stage: what came out, and everything that the facts hold about how it was made.</summary>
/// <param name="Failed">True when it failed in the way that is asked about.</param>
/// <param name="Value">The measured value, when the question is about one.</param>
/// <param name="Levels">Factor to level: "film lot" to "F-0007", "weekday" to "Monday". An absent factor is unknown for this part.</param>
public readonly record struct FactorRow(bool Failed, double? Value, IReadOnlyDictionary<string, string> Levels);
