using System.Globalization;
using System.Text;
using Traceability.SeedScenario.Api;

namespace Traceability.SeedScenario.History;

/// <summary>What the logger in the cabinet writes: from the room to each set point at 1 K/min, and then a little around it.</summary>
internal static class ClimateLog
{
    private const double RoomC = 23;
    private const double RoomPct = 45;
    private const double RampKPerMinute = 1;
    private const int MinutesBetweenLines = 2;

    public static string Of(IReadOnlyList<PhaseView> phases, DateTimeOffset from, DateTimeOffset until, Chance chance)
    {
        var csv = new StringBuilder("# logger LOG-01 (invented)\ntime,temperature_c,humidity_pct\n");
        var share = (until - from) / phases.Count;
        var (temperatureC, humidityPct) = (RoomC, RoomPct);
        for (var at = from; at <= until; at = at.AddMinutes(MinutesBetweenLines))
        {
            var phase = phases[Math.Min((int)((at - from) / share), phases.Count - 1)];
            temperatureC += Math.Clamp(
                phase.TemperatureC - temperatureC,
                -RampKPerMinute * MinutesBetweenLines,
                RampKPerMinute * MinutesBetweenLines
            );
            var wantedPct = phase.HumidityPct ?? (phase.TemperatureC > RoomC ? 20 : 60);
            humidityPct += Math.Clamp(wantedPct - humidityPct, -6, 6);
            csv.Append(
                CultureInfo.InvariantCulture,
                $"{at:yyyy-MM-ddTHH:mm:ssZ},{temperatureC + chance.Near(0, 0.15):0.0},{humidityPct + chance.Near(0, 0.4):0.0}\n"
            );
        }

        return csv.ToString();
    }
}
