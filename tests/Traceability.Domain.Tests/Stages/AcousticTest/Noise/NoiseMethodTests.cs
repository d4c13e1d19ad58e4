using System.Globalization;
using CsCheck;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Tests.Stages.AcousticTest.Noise;

public class NoiseMethodTests
{
    /// <summary>Minutes of noise at a rate at which a test does not take as long.</summary>
    private const int SlowRateHz = 8000;
    private const string Flat = "frequency_hz,level_db\n100,0\n1000,0\n10000,0\n";
    private static readonly string[] Nominal =
    [
        "20",
        "25",
        "31.5",
        "40",
        "50",
        "63",
        "80",
        "100",
        "125",
        "160",
        "200",
        "250",
        "315",
        "400",
        "500",
        "630",
        "800",
        "1000",
        "1250",
        "1600",
        "2000",
        "2500",
        "3150",
        "4000",
        "5000",
        "6300",
        "8000",
        "10000",
        "12500",
        "16000",
        "20000",
    ];

    private static AMethod Stage =>
        AMethod
            .Named("response-in-mask")
            .Files("frequency-response", "front")
            .Files("noise-spectrum", "noise-spectrum")
            .Files("noise-recording", "noise-recording")
            .Reads("sensitivityFrontMvPa")
            .Computes("frontMarginDb")
            .MayCompute("spectrumNoiseDba", "recordedNoiseDba", "recordedCrackles")
            .With(new() { Mask = [new(100, -3, 3), new(10_000, -3, 3)] })
            .Enter("sensitivityFrontMvPa", 20)
            .File("front", "frequency-response", Flat);

    /// <summary>Published value E5-002: bands of 0.9 µV/(1 + 0.15 i) from 20 Hz on at 20 mV/Pa are 7.122 dB(A).</summary>
    [Fact]
    public void A_spectrum_gives_the_equivalent_level()
    {
        Assert.Equal(7.1m, Stage.File("noise-spectrum", "noise-spectrum", Spectrum()).Judge().Value("spectrumNoiseDba"));
    }

    /// <summary>A sine of 1 kHz is not weighted: 1 mV rms at 20 mV/Pa is 0.05 Pa, 20 lg(0.05 Pa/20 µPa) = 67.96 dB.</summary>
    [Fact]
    public void A_recorded_sine_has_the_level_of_its_voltage()
    {
        float[] sine =
        [
            .. Enumerable
                .Range(0, 2 * Waves.RateHz)
                .Select(i => (float)(1e-3 * Math.Sqrt(2) * Math.Sin(2 * Math.PI * 1000 * i / Waves.RateHz))),
        ];
        Assert.Equal(68.0m, Recorded(sine).Value("recordedNoiseDba"));
    }

    [Theory]
    [InlineData(0, 60, 0)]
    [InlineData(1, 60, 1)]
    [InlineData(3, 60, 3)]
    [InlineData(3, 90, 2)]
    public void Crackles_are_counted_per_minute_and_their_times_told(int count, int seconds, int perMinute)
    {
        var outcome = Recorded(Crackling(count, seconds), rateHz: SlowRateHz);

        Assert.Equal(perMinute, outcome.Value("recordedCrackles"));
        outcome.Says(count == 0 ? $"no crackle in {seconds}.0 s" : "at 0.250 s");
        outcome.Says("after a high-pass of 200 Hz");
    }

    [Fact]
    public void A_recording_shorter_than_a_minute_gets_no_count_but_its_noise_level_still()
    {
        var outcome = Recorded(Crackling(3, 2), rateHz: SlowRateHz);

        Assert.DoesNotContain(outcome.Computed, c => c.Characteristic == "recordedCrackles");
        Assert.Contains(outcome.Computed, c => c.Characteristic == "recordedNoiseDba");
        outcome.Says("no count of crackles per minute from 2.0 s");
        outcome.Says("3 in it");
    }

    [Fact]
    public void Noise_in_a_pattern_is_referred_to_the_sensitivity_of_that_pattern()
    {
        var stage = AMethod
            .Named("response-in-mask")
            .Files("frequency-response", "front")
            .Files("noise-spectrum", "noise-spectrum-omni", "noise-spectrum-cardioid")
            .Reads("sensitivityOmniMvPa", "sensitivityCardioidMvPa")
            .Computes("frontMarginDb")
            .MayCompute("spectrumNoiseOmniDba", "spectrumNoiseCardioidDba")
            .With(new() { Mask = [new(100, -3, 3), new(10_000, -3, 3)] });
        Assert.Empty(stage.Problems);
        var outcome = stage
            .Enter("sensitivityOmniMvPa", 10)
            .Enter("sensitivityCardioidMvPa", 20)
            .File("front", "frequency-response", Flat)
            .File("noise-spectrum-omni", "noise-spectrum", Spectrum())
            .File("noise-spectrum-cardioid", "noise-spectrum", Spectrum())
            .Judge();

        // E5-002 gives 7.122 dB(A) at 20 mV/Pa; at half the sensitivity the same voltage is 6.02 dB more.
        Assert.Equal((13.1m, 7.1m), (outcome.Value("spectrumNoiseOmniDba"), outcome.Value("spectrumNoiseCardioidDba")));
    }

    [Fact]
    public void With_several_sensitivities_a_noise_that_names_none_of_them_is_referred_to_none()
    {
        var stage = Stage.Reads("sensitivityRearMvPa").Enter("sensitivityRearMvPa", 10);
        Assert.Contains(stage.Problems, p => p.Contains("spectrumNoiseFrontDba", StringComparison.Ordinal));

        var outcome = stage.File("noise-spectrum", "noise-spectrum", Spectrum()).Judge();

        Assert.DoesNotContain(outcome.Computed, c => c.Characteristic == "spectrumNoiseDba");
        outcome.Says("no noise level from 'noise-spectrum'");
    }

    private static string Spectrum() =>
        "frequency_hz,level_dbv\n"
        + string.Concat(
            Nominal.Select(
                (f, i) => string.Create(CultureInfo.InvariantCulture, $"{f},{20 * Math.Log10(0.9e-6 / (1 + 0.15 * i)):0.0000}\n")
            )
        );

    private static float[] Crackling(int count, int seconds)
    {
        var noise = Recording.Noise(seconds * SlowRateHz);
        for (var k = 0; k < count; k++)
            noise[SlowRateHz / 4 * (k + 1)] = 0.05f;
        return noise;
    }

    [Fact]
    public void The_noise_of_the_station_is_taken_off_as_power_or_said_to_be_too_near()
    {
        var whole = Recorded(Recording.Noise(Waves.RateHz, 1e-5)).Value("recordedNoiseDba");
        // 10 lg(10^0 - 10^-0.6) = -1.256 dB for a station 6 dB below.
        Assert.Equal(
            (double)whole - 1.26,
            (double)Recorded(Recording.Noise(Waves.RateHz, 1e-5), station: whole - 6).Value("recordedNoiseDba"),
            0.11
        );
        Recorded(Recording.Noise(Waves.RateHz, 1e-5), station: whole - 2).Says("not more than that");
    }

    [Fact]
    public void Halving_the_samples_and_doubling_the_full_scale_changes_nothing() =>
        Gen.Int[1, 1000]
            .Sample(
                seed =>
                {
                    var noise = Recording.Noise(8192, 1e-3, seed);
                    var (one, other) = (Recorded(noise), Recorded([.. noise.Select(s => s / 2)], 2));
                    return one.Value("recordedNoiseDba") == other.Value("recordedNoiseDba");
                },
                iter: 20
            );

    [Fact]
    public void A_louder_recording_is_never_quieter() =>
        Gen.Select(Gen.Int[1, 1000], Gen.Double[1, 10])
            .Sample(
                (seed, gain) =>
                    Recorded(Recording.Noise(8192, 1e-4, seed)).Value("recordedNoiseDba")
                    <= Recorded([.. Recording.Noise(8192, 1e-4, seed).Select(s => (float)(gain * s))]).Value("recordedNoiseDba"),
                iter: 20
            );

    [Fact]
    public void Of_a_clipped_recording_nothing_is_made_and_the_sample_is_named()
    {
        var outcome = Recorded([0, 0.5f, 1, 1, 1, 0.2f]);
        outcome.Says("clipped, first at sample 3");
        Assert.DoesNotContain(outcome.Computed, c => c.Characteristic.StartsWith("recorded", StringComparison.Ordinal));
        Assert.False(outcome.Fails());
    }

    [Fact]
    public void Of_a_silent_recording_nothing_is_made() => Recorded(new float[4800]).Says("silent");

    [Fact]
    public void Where_the_route_insists_on_the_recording_a_clipped_one_leaves_no_verdict()
    {
        var stage = Stage.Computes("recordedNoiseDba");
        stage = stage with
        {
            Stage = stage.Stage with
            {
                Characteristics = [.. stage.Stage.Characteristics.Where(c => c.Name != "recordedNoiseDba" || c.Required)],
            },
        };
        Assert.NotNull(stage.File("noise-recording", "noise-recording", Waves.Float([0, 1, 1, 1, 0]), 1).Judge().Unreadable);
    }

    private static StageOutcome Recorded(
        IReadOnlyList<float> samples,
        decimal fullScaleV = 1,
        decimal? station = null,
        int rateHz = Waves.RateHz
    )
    {
        var stage = Stage.MayRead("stationNoiseDba").File("noise-recording", "noise-recording", Waves.Float(samples, rateHz), fullScaleV);
        return (station is { } level ? stage.Enter("stationNoiseDba", level) : stage).Judge();
    }
}
