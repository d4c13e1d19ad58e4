using System.Diagnostics;
using System.Globalization;
using Traceability.Domain.Evidence;
using Traceability.Domain.Quality.Pairing;
using Traceability.Domain.Stages;
using Traceability.Domain.Stages.AcousticTest.Noise;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Benchmarks;

/// <summary>
/// How long the heavy computations of the stages take, from the bytes of the evidence to the verdict, each beside its limit.
/// </summary>
internal static class StagesBenchmark
{
    private const int WarmUp = 10;
    private const int Runs = 31;

    public static int Run()
    {
        var log = LongEvidence.DayOfSeconds();
        var recording = LongEvidence.TenSecondsOfNoise();
        var response = LongEvidence.Response(points: 1000);
        var soak = new StageInput(
            LongEvidence.Soak,
            new Dictionary<string, decimal>(),
            [log],
            LongEvidence.Start,
            LongEvidence.Start.AddDays(1),
            _ => null
        );
        var acoustic = new StageInput(
            LongEvidence.Acoustic,
            new Dictionary<string, decimal>(),
            [response],
            LongEvidence.Start,
            LongEvidence.Start,
            _ => null
        );
        var diaphragms = LongEvidence.Diaphragms(200);
        bool[] withinLimits =
        [
            Measure(
                "24 h climate log, 86 400 lines, three phases judged",
                100,
                () => StageMethods.Get("climate-soak").Judge(soak).Unreadable is null
            ),
            Measure("10 s of noise at 96 kHz, 24 bit: read, A-weighted level, crackles", 400, () => Analyse(recording) > 0),
            Measure(
                "response of 1 000 points judged by its mask",
                5,
                () => StageMethods.Get("response-in-mask").Judge(acoustic).Unreadable is null
            ),
            Measure(
                "best pairing of 200 diaphragms",
                200,
                () => BestPairing.Of(PairingCosts.ByDistance(diaphragms, [20, 0.4])).Pairs.Count == 100
            ),
        ];
        return withinLimits.All(within => within) ? 0 : 1;
    }

    private static double Analyse(EvidenceFile recording)
    {
        var wav = WavRecordingFile.Read(recording.Bytes, (double)recording.FullScaleV!.Value).Data!;
        var levelDb = EquivalentNoise.LevelDb(
            RecordingSpectrum.Of(wav.Volts.Span, wav.SampleRateHz).AWeightedRms(),
            sensitivityVPerPa: 0.02
        );
        return levelDb + CrackleCount.In(wav.Volts.Span, wav.SampleRateHz).Count;
    }

    /// <summary>The median of some runs after a warm-up; what is measured must come to the answer it should.</summary>
    private static bool Measure(string what, double limitMs, Func<bool> work)
    {
        var times = new List<double>(Runs);
        for (var run = 0; run < WarmUp + Runs; run++)
        {
            var watch = Stopwatch.StartNew();
            if (!work())
            {
                throw new InvalidOperationException($"{what}: not the answer that was expected");
            }

            times.Add(watch.Elapsed.TotalMilliseconds);
        }

        var median = RecordsBenchmark.Median(times.Skip(WarmUp));
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{what}: {median:0.0} ms, limit {limitMs:0} ms{(median < limitMs ? "" : "  OVER")}"
            )
        );
        return median < limitMs;
    }
}
