using Traceability.Domain.Stages.AcousticTest.Noise;

namespace Traceability.Domain.Tests.Stages.AcousticTest.Noise;

public class RecordingSpectrumTests
{
    [Fact]
    public void The_whole_spectrum_holds_the_power_of_the_recording()
    {
        var samples = Recording.Noise(480_000);
        var rms = Math.Sqrt(samples.Average(s => (double)s * s));
        Assert.Equal(1, RecordingSpectrum.Of(samples, Recording.RateHz).RmsIn(0, 24_000) / rms, 5e-3);
    }

    [Fact]
    public void A_sine_shows_in_its_band_with_its_rms_value()
    {
        float[] samples = [.. Enumerable.Range(0, 96_000).Select(i => (float)(0.1 * Math.Sin(2 * Math.PI * 1000 * i / Recording.RateHz)))];
        var spectrum = RecordingSpectrum.Of(samples, Recording.RateHz);
        Assert.Equal(0.1 / Math.Sqrt(2), spectrum.RmsIn(891.25, 1122.02), 1e-5);
        Assert.Equal(0.1 / Math.Sqrt(2), spectrum.AWeightedRms(), 1e-4);
        var bands = spectrum.ThirdOctaves();
        Assert.Equal(1000, bands.MaxBy(band => band.Volts).MidHz, 1e-9);
        Assert.True(bands.Where(band => band.MidHz != 1000).All(band => band.Volts < 1e-4));
    }

    /// <summary>
    /// White noise through the A curve, the integral taken with the pole frequencies printed in IEC 61672-1 (20.6, 107.7, 737.9, 12 194
    /// Hz, from memory).
    /// </summary>
    [Fact]
    public void White_noise_loses_under_the_A_curve_what_its_integral_says()
    {
        static double A(double f)
        {
            var s = f * f;
            var ratio =
                12194.0
                * 12194.0
                * s
                * s
                / ((s + 20.6 * 20.6) * Math.Sqrt((s + 107.7 * 107.7) * (s + 737.9 * 737.9)) * (s + 12194.0 * 12194.0));
            return ratio * ratio * Math.Pow(10, 0.2);
        }
        var expected = Math.Sqrt(Enumerable.Range(10, 19_990).Sum(f => A(f + 0.5)) / 24_000);
        var samples = Recording.Noise(480_000);
        var rms = Math.Sqrt(samples.Average(s => (double)s * s));
        Assert.Equal(1, RecordingSpectrum.Of(samples, Recording.RateHz).AWeightedRms() / rms / expected, 0.01);
    }

    [Fact]
    public void The_bands_add_up_to_the_weighted_value()
    {
        var spectrum = RecordingSpectrum.Of(Recording.Noise(480_000), Recording.RateHz);
        Assert.Equal(1, EquivalentNoise.AWeightedV(spectrum.ThirdOctaves()) / spectrum.AWeightedRms(), 0.02);
    }

    [Fact]
    public void A_recording_of_a_moment_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => RecordingSpectrum.Of(new float[100], Recording.RateHz));
}
