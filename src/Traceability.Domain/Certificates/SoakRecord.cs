namespace Traceability.Domain.Certificates;

/// <summary>A climate soak as logged, with the phases that the route asked for.</summary>
/// <param name="Title" example="Climate soak of CD-0071, humid">Title of the picture.</param>
/// <param name="PartSerial" example="CD-0071">The part that was soaked.</param>
/// <param name="Samples">The log in ascending time; may be thinned, as the raw file is kept with the attempt.</param>
/// <param name="Phases">Phases in the order in which they were run.</param>
/// <param name="Conclusion" example="120 min inside the tolerance, at least 120 min asked for">
/// What was computed from the log, in a sentence.
/// </param>
public sealed record SoakRecord(
    string Title,
    string PartSerial,
    IReadOnlyList<CertifiedSample> Samples,
    IReadOnlyList<CertifiedPhase> Phases,
    string Conclusion
);

/// <summary>One line of a climate log.</summary>
/// <param name="At" example="2026-01-31T14:20:00+01:00">When it was taken.</param>
/// <param name="TemperatureC" example="40.1">Air temperature in degrees Celsius.</param>
/// <param name="HumidityPct" example="92.6">Relative humidity in percent; null when the logger took none.</param>
public readonly record struct CertifiedSample(DateTimeOffset At, double TemperatureC, double? HumidityPct);

/// <summary>One phase of a soak with its tolerances.</summary>
/// <param name="Name" example="humid">Name of the phase: "warm", "cold", "humid".</param>
/// <param name="From" example="2026-01-31T14:20:00+01:00">When the climate was inside tolerance for the first time.</param>
/// <param name="To" example="2026-01-31T16:20:00+01:00">When the phase ended.</param>
/// <param name="TemperatureC" example="40">Temperature asked for, in degrees Celsius.</param>
/// <param name="TemperatureToleranceK" example="2">Allowed deviation to either side, in kelvins.</param>
/// <param name="HumidityPct" example="93">Relative humidity asked for, in percent; null when any will do.</param>
/// <param name="HumidityTolerancePct" example="3">Allowed deviation to either side, in percentage points.</param>
public sealed record CertifiedPhase(
    string Name,
    DateTimeOffset From,
    DateTimeOffset To,
    double TemperatureC,
    double TemperatureToleranceK,
    double? HumidityPct = null,
    double? HumidityTolerancePct = null
);
