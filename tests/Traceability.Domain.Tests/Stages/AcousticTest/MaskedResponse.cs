using System.Globalization;
using CsCheck;
using Traceability.Domain.Routes;

namespace Traceability.Domain.Tests.Stages.AcousticTest;

/// <summary>A response judged by a mask of 3 dB around 1 kHz: what the tests of acoustic methods begin with.</summary>
internal static class MaskedResponse
{
    public static readonly StageParameters Mask = new() { MaskedEvidence = ["front"], Mask = [new(100, -3, 3), new(10_000, -3, 3)] };

    public static AMethod Plain =>
        AMethod.Named("response-in-mask").Files("frequency-response", "front", "rear", "side").Computes("frontMarginDb").With(Mask);

    public static string Curve(Func<double, double> level) =>
        "frequency_hz,level_db\n"
        + string.Concat(
            new double[] { 100, 200, 500, 1000, 2000, 2500, 2800, 3000, 3200, 3500, 5000, 10_000 }.Select(f =>
                string.Create(CultureInfo.InvariantCulture, $"{f},{level(f):0.######}\n")
            )
        );
}
