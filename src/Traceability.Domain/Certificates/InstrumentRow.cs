namespace Traceability.Domain.Certificates;

/// <summary>An instrument that gave readings, with the calibration that was valid when it did.</summary>
/// <param name="Code" example="RM-1">Code of the instrument in the workshop.</param>
/// <param name="Kind" example="reference microphone">What it is, such as "reference microphone".</param>
/// <param name="CalibratedOn" example="2025-11-03">Day of the calibration; null when none was in force.</param>
/// <param name="DueOn" example="2026-11-03">Day on which the next one is due.</param>
/// <param name="CalibrationReference" example="CAL-2025-118">Number of the calibration record or certificate.</param>
public sealed record InstrumentRow(string Code, string Kind, DateOnly? CalibratedOn, DateOnly? DueOn, string? CalibrationReference)
{
    /// <summary>What the workshop calls it; null in certificates that were issued before it was told.</summary>
    /// <example>Reference microphone 1</example>
    public string? Title { get; init; }
}
