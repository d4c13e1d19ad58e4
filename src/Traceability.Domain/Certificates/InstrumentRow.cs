namespace Traceability.Domain.Certificates;

/// <summary>An instrument that gave readings, with the calibration that was valid when it did.</summary>
/// <param name="Code">Code of the instrument in the workshop.</param>
/// <param name="Kind">What it is, such as "reference microphone".</param>
/// <param name="CalibratedOn">Day of the calibration; null when none was in force.</param>
/// <param name="DueOn">Day on which the next one is due.</param>
/// <param name="CalibrationReference">Number of the calibration record or certificate.</param>
public sealed record InstrumentRow(string Code, string Kind, DateOnly? CalibratedOn, DateOnly? DueOn, string? CalibrationReference)
{
    /// <summary>What the workshop calls it; null in certificates that were issued before it was told.</summary>
    public string? Title { get; init; }
}
