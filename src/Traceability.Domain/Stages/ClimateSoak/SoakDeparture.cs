namespace Traceability.Domain.Stages.ClimateSoak;

/// <summary>Which tolerance a line of the log misses first.</summary>
internal enum SoakDeparture
{
    None,
    Temperature,
    Humidity,
    NoHumidity,
}

/// <summary>The tolerance of a phase applied to one line of the log.</summary>
internal static class SoakTolerance
{
    /// <summary>So that 23.2 °C is inside 22.9 ± 0.3 °C although the binary difference is a hair above 0.3.</summary>
    private const double Rounding = 1e-9;

    /// <summary>Humidity is looked at only when the temperature is in tolerance: at a wrong temperature it says nothing.</summary>
    public static SoakDeparture Departure(this SoakPhase phase, ClimateSample sample)
    {
        if (!(Math.Abs(sample.TemperatureC - phase.TemperatureC) <= phase.TemperatureToleranceK + Rounding))
            return SoakDeparture.Temperature;
        if (phase.HumidityPct is not { } wanted)
            return SoakDeparture.None;
        if (sample.HumidityPct is not { } humidity || double.IsNaN(humidity))
            return SoakDeparture.NoHumidity;
        return Math.Abs(humidity - wanted) <= phase.HumidityTolerancePct + Rounding ? SoakDeparture.None : SoakDeparture.Humidity;
    }
}
