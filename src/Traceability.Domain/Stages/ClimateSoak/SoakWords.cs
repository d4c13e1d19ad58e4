using System.Globalization;

namespace Traceability.Domain.Stages.ClimateSoak;

/// <summary>The one spelling of times in the findings of a soak, and what is outside.</summary>
internal static class SoakWords
{
    public static string Time(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);

    public static string Outside(ClimateSample sample, SoakPhase phase) =>
        phase.Departure(sample) switch
        {
            SoakDeparture.Temperature => SoakTexts.TemperatureIsOutside(
                Time(sample.At),
                sample.TemperatureC,
                phase.TemperatureC,
                phase.TemperatureToleranceK
            ),
            SoakDeparture.NoHumidity => SoakTexts.NoHumidityReading(Time(sample.At)),
            _ => SoakTexts.HumidityIsOutside(Time(sample.At), sample.HumidityPct, phase.HumidityPct, phase.HumidityTolerancePct),
        };
}
