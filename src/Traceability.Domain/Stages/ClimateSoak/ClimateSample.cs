namespace Traceability.Domain.Stages.ClimateSoak;

/// <summary>One line of a climate log.</summary>
/// <param name="At">When the logger took the reading.</param>
/// <param name="TemperatureC">Air temperature, °C; NaN stands for "the logger gave none" and counts as no reading.</param>
/// <param name="HumidityPct">Relative humidity, %, where the logger has such a channel.</param>
public readonly record struct ClimateSample(DateTimeOffset At, double TemperatureC, double? HumidityPct = null);
