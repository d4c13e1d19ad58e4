using System.Globalization;
using System.Text;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Benchmarks;

/// <summary>Invented evidence of the largest usual size, and the stages that judge it. The same at every run.</summary>
internal static class LongEvidence
{
    public static readonly DateTimeOffset Start = new(2026, 3, 2, 6, 0, 0, TimeSpan.Zero);

    public static readonly Stage Soak = new("soak", "Climate soak", "climate-soak")
    {
        Evidence = [new("log", "climate-log", true)],
        Characteristics = [Minutes("dryDwellMinutes"), Minutes("dampDwellMinutes"), Minutes("recoveryDwellMinutes")],
        Parameters = new()
        {
            ToleranceSource = "invented for the benchmark",
            Phases =
            [
                new("dry", 40, 2, null, null, 240, 1, 5),
                new("damp", 30, 2, 85, 5, 480, 1, 5),
                new("recovery", 23, 2, 50, 10, 120, 1, 5),
            ],
        },
    };

    public static readonly Stage Acoustic = new("acoustic", "Acoustic test", "response-in-mask")
    {
        Evidence = [new("front", "frequency-response", true)],
        Characteristics = [new("frontMarginDb", "margin", "dB", null, 0, null, null, false, false)],
        Parameters = new() { Mask = [new(20, -6, 3), new(100, -2, 2), new(5000, -2, 2), new(10000, -3, 6), new(20000, -8, 6)] },
    };

    /// <summary>86 400 lines, a second apart: 6 h dry heat, 12 h damp heat, then recovery, with the noise of a logger.</summary>
    public static EvidenceFile DayOfSeconds()
    {
        var random = new Random(1);
        var text = new StringBuilder("time,temperature_c,humidity_pct\n");
        var (temperature, humidity) = (23.0, 50.0);
        for (var second = 0; second < 86_400; second++)
        {
            var (toC, toPct) =
                second < 6 * 3600 ? (40, 30)
                : second < 18 * 3600 ? (30, 85)
                : (23, 50);
            temperature += Math.Clamp(toC - temperature, -0.008, 0.008);
            humidity += Math.Clamp(toPct - humidity, -0.02, 0.02);
            text.Append(
                CultureInfo.InvariantCulture,
                $"{Start.AddSeconds(second):yyyy-MM-ddTHH:mm:ss}Z,{temperature + 0.1 * (random.NextDouble() - 0.5):0.00},"
                    + $"{humidity + random.NextDouble() - 0.5:0.0}\n"
            );
        }

        return File("log", "climate-log", Encoding.UTF8.GetBytes(text.ToString()));
    }

    /// <summary>960 000 samples of 24 bits: noise with two hundred crackles.</summary>
    public static EvidenceFile TenSecondsOfNoise()
    {
        const int rate = 96_000,
            samples = 10 * rate,
            bytes = 3;
        var random = new Random(2);
        using var stream = new MemoryStream();
        using var writer = new BinaryWriter(stream);
        writer.Write("RIFF"u8);
        writer.Write(36 + samples * bytes);
        writer.Write("WAVEfmt "u8);
        writer.Write(16);
        writer.Write((short)1);
        writer.Write((short)1);
        writer.Write(rate);
        writer.Write(rate * bytes);
        writer.Write((short)bytes);
        writer.Write((short)(8 * bytes));
        writer.Write("data"u8);
        writer.Write(samples * bytes);
        for (var i = 0; i < samples; i++)
        {
            var noise = Enumerable.Range(0, 4).Sum(_ => random.NextDouble() - 0.5) * 0.002;
            var sample = (int)((i % 4800 == 4000 ? 0.2 : noise) * 8_388_607);
            writer.Write((byte)sample);
            writer.Write((byte)(sample >> 8));
            writer.Write((byte)(sample >> 16));
        }

        return File("noise", "noise-recording", stream.ToArray()) with
        {
            FullScaleV = 1,
        };
    }

    /// <summary>A response from 20 Hz to 20 kHz that bends like a capsule's.</summary>
    public static EvidenceFile Response(int points)
    {
        var text = new StringBuilder("frequency_hz,level_db\n");
        for (var i = 0; i < points; i++)
        {
            var frequency = 20 * Math.Pow(1000, i / (points - 1.0));
            var level = 2.5 * Math.Exp(-Math.Pow(Math.Log(frequency / 9000), 2) * 4) - 1.5 * Math.Exp(-frequency / 60);
            text.Append(CultureInfo.InvariantCulture, $"{frequency:0.###},{level:0.000}\n");
        }

        return File("front", "frequency-response", Encoding.UTF8.GetBytes(text.ToString()));
    }

    /// <summary>Resonance in hertz and level in dB of diaphragms that wait for a mate.</summary>
    public static IReadOnlyList<IReadOnlyList<double>> Diaphragms(int count)
    {
        var random = new Random(3);
        return [.. Enumerable.Range(0, count).Select(_ => new[] { 900 + 40 * random.NextDouble(), -34 + 2 * random.NextDouble() })];
    }

    private static Characteristic Minutes(string name) => new(name, name, "min", null, null, null, null, false, false);

    private static EvidenceFile File(string name, string kind, byte[] bytes) => new(Guid.Empty, name, kind, bytes, null);
}
