namespace Traceability.Domain.Quality.Returns;

/// <summary>How long a unit has been in the field: until it came back failed, or until now without having failed (censored).</summary>
/// <param name="Time">The time in any unit, above 0 (0 or more for Kaplan-Meier).</param>
/// <param name="Failed">True when it failed at that time, false when it was still good then.</param>
public readonly record struct Lifetime(double Time, bool Failed);
