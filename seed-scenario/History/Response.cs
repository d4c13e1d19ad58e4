using System.Globalization;
using System.Text;

namespace Traceability.SeedScenario.History;

/// <summary>
/// Responses as an analyser would write them: a sixth of an octave from 20 Hz to 20 kHz, the level free of meaning but for its shape.
/// </summary>
internal static class Response
{
    /// <summary>A response with a gentle rise, a fall at both ends, and what is particular about this one.</summary>
    /// <param name="chance">Whose.</param>
    /// <param name="levelDb">Level at 1 kHz, about.</param>
    /// <param name="presenceDb">Height of the rise at 8 kHz.</param>
    /// <param name="lowDb">What is lost at 20 Hz.</param>
    /// <param name="highDb">What is lost at 20 kHz.</param>
    /// <param name="dipDb">Depth of a dip at 3 kHz that a sound capsule does not have.</param>
    public static string Csv(Chance chance, double levelDb, double presenceDb, double lowDb, double highDb, double dipDb = 0)
    {
        var (presence, low, high) = (chance.Near(presenceDb, 0.25), chance.Near(lowDb, 0.2), chance.Near(highDb, 0.4));
        var csv = new StringBuilder("# analyser ACO-01 (invented)\nfrequency_hz,level_db\n");
        for (var i = 0; i <= 60; i++)
        {
            var hz = 1000 * Math.Pow(10, i / 20.0 - 1.7);
            hz = i switch
            {
                0 => 20,
                60 => 20000,
                _ => Math.Round(hz, hz < 100 ? 1 : 0),
            };
            var db =
                levelDb
                + presence * Bell(hz, 8000, 0.9)
                - dipDb * Bell(hz, 3000, 0.35)
                - low * Math.Pow(Math.Min(1, 20 / hz), 0.8)
                - high * Math.Pow(hz / 20000, 3)
                + chance.Near(0, 0.06);
            csv.Append(CultureInfo.InvariantCulture, $"{hz},{db:0.00}\n");
        }

        return csv.ToString();
    }

    private static double Bell(double hz, double centreHz, double octaves) => Math.Exp(-Math.Pow(Math.Log2(hz / centreHz) / octaves, 2));
}
