using Traceability.Domain.Certificates;
using static Traceability.Documents.Tests.Certificates.Examples;

namespace Traceability.Documents.Tests.Certificates;

internal static class Soaks
{
    public static SoakRecord WarmColdHumid(string serial) =>
        new(
            "Climate soak before the insulation test",
            serial,
            [.. Enumerable.Range(0, 30 * 12 + 1).Select(i => Sample(i * 5))],
            [
                new("warm", Minute(60), Minute(540), 45, 2),
                new("cold", Minute(660), Minute(1020), -10, 3),
                new("humid", Minute(1140), Minute(1740), 32, 2, 92, 4),
            ],
            "All phases held: warm 8 h 0 min, cold 6 h 0 min, humid 10 h 0 min inside tolerance; no excursion; no condensation."
        );

    private static DateTimeOffset Minute(int minute) => At(13, 5).AddMinutes(minute);

    private static CertifiedSample Sample(int minute) =>
        new(
            Minute(minute),
            Math.Round(
                Along(minute, (0, 21), (60, 45), (540, 45), (660, -10), (1020, -10), (1140, 32), (1740, 32), (1800, 24))
                    + 0.4 * Math.Sin(minute / 17.0),
                2
            ),
            Math.Round(
                Along(minute, (0, 48), (60, 18), (540, 15), (660, 55), (1020, 60), (1140, 92), (1740, 92), (1800, 60))
                    + 0.9 * Math.Sin(minute / 23.0),
                1
            )
        );

    private static double Along(int at, params (int Minute, double Value)[] corners)
    {
        var next = Math.Max(1, Array.FindIndex(corners, corner => corner.Minute >= at));
        var (from, to) = (corners[next - 1], corners[next]);
        return from.Value + (to.Value - from.Value) * (at - from.Minute) / (to.Minute - from.Minute);
    }
}
