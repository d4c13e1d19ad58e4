using System.Globalization;

namespace Traceability.Domain.Stages.ClimateSoak;

/// <summary>The one spelling of times and numbers in the findings of a soak.</summary>
internal static class SoakWords
{
    public static string Time(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);

    public static string Say(FormattableString sentence) => sentence.ToString(CultureInfo.InvariantCulture);

    public static string Outside(ClimateSample sample, SoakPhase phase) => phase.Departure(sample) switch
    {
        SoakDeparture.Temperature => Say(
            $"{Time(sample.At)}: {sample.TemperatureC:0.0##} °C is outside {phase.TemperatureC:0.###} ± {phase.TemperatureToleranceK:0.###} °C"),
        SoakDeparture.NoHumidity => $"{Time(sample.At)}: no humidity reading",
        _ => Say($"{Time(sample.At)}: {sample.HumidityPct:0.0##} % is outside {phase.HumidityPct:0.###} ± {phase.HumidityTolerancePct:0.###} % RH"),
    };
}
