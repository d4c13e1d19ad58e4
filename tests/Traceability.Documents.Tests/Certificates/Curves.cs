using Traceability.Domain.Certificates;

namespace Traceability.Documents.Tests.Certificates;

internal static class Curves
{
    private const string Conditions =
        "Plane-wave equivalent at 1 Pa, sound incidence 0°, distance 1.00 m, 1/12-octave smoothing; 0 dB is the level at 1 kHz.";

    private static readonly CertifiedMaskPoint[] Mask =
    [
        new(20, -6, 2),
        new(60, -3, 2),
        new(200, -2, 2),
        new(4000, -2, 2),
        new(9000, -2, 5.5),
        new(14000, -4, 5),
        new(20000, -12, 2),
    ];

    public static CertifiedCurve Cardioid(string title) => new(title, [new("front, 0°", Trace(0, 1))], Mask, Conditions);

    public static CertifiedCurve FrontAndRear(string title) =>
        new(title, [new("front", Trace(0, 1)), new("rear", Trace(0.3, 0.85))], Mask, Conditions);

    public static CertifiedCurve WithoutMask(string title) => new(title, [new("front, 0°", Trace(-0.4, 0.6))], [], Conditions);

    private static CertifiedPoint[] Trace(double shift, double presence) =>
        [
            .. Enumerable
                .Range(0, 121)
                .Select(i => 20 * Math.Pow(1000, i / 120.0))
                .Select(f => new CertifiedPoint(Math.Round(f, 1), Math.Round(Level(f, presence) + shift, 2))),
        ];

    private static double Level(double f, double presence) =>
        -2.2 / (1 + Math.Pow(f / 32, 2))
        + 3.4 * presence * Math.Exp(-Math.Pow(Math.Log(f / 9500) / 0.42, 2))
        - 3.2 / (1 + Math.Pow(17500 / f, 6))
        + 0.18 * Math.Sin(9 * Math.Log(f));
}
