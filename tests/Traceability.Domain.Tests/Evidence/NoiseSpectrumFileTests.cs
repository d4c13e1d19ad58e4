using System.Globalization;
using Traceability.Domain.Evidence;
using static Traceability.Domain.Tests.Evidence.EvidenceText;

namespace Traceability.Domain.Tests.Evidence;

public class NoiseSpectrumFileTests
{
    // Source: nominal mid-frequencies of one-third-octave bands, 20 Hz to 20 kHz, IEC 61260-1 / ISO 266 (from memory).
    private static readonly double[] Nominal =
    [
        20,
        25,
        31.5,
        40,
        50,
        63,
        80,
        100,
        125,
        160,
        200,
        250,
        315,
        400,
        500,
        630,
        800,
        1000,
        1250,
        1600,
        2000,
        2500,
        3150,
        4000,
        5000,
        6300,
        8000,
        10000,
        12500,
        16000,
        20000,
    ];

    private static ParsedFile<NoiseSpectrum> Read(IEnumerable<double> frequencies) =>
        NoiseSpectrumFile.Read(
            Lines(["frequency_hz,level_dbv", .. frequencies.Select(f => string.Create(CultureInfo.InvariantCulture, $"{f},-120.5"))])
        );

    [Fact]
    public void The_nominal_bands_are_numbered_around_one_kilohertz()
    {
        var bands = Read(Nominal).Data!.Bands;

        Assert.Equal(Enumerable.Range(-17, 31), bands.Select(band => band.Band));
        Assert.Equal(1000, bands[17].ExactFrequencyHz);
        Assert.Equal(new(-17, 20, -120.5), bands[0]);
    }

    [Fact]
    public void Exact_mid_frequencies_to_base_ten_and_base_two_are_taken()
    {
        Assert.True(Read(Enumerable.Range(-17, 31).Select(x => 1000 * Math.Pow(10, x / 10.0))).IsGood);
        Assert.True(Read(Enumerable.Range(-17, 31).Select(x => 1000 * Math.Pow(2, x / 3.0))).IsGood);
    }

    [Fact]
    public void A_band_left_out_in_the_middle_is_refused() =>
        Assert.Equal(
            "Between 400 Hz and 630 Hz bands are missing or given twice.",
            Assert.Single(Read(Nominal.Where(f => f != 500)).Problems).ToString()
        );

    [Fact]
    public void A_frequency_between_bands_is_refused() =>
        Assert.Contains(
            "1100 Hz is not the mid-frequency",
            Read([.. Nominal[..18], 1100, .. Nominal[19..]]).Problems[0].ToString(),
            StringComparison.Ordinal
        );

    [Fact]
    public void Ten_bands_are_enough_and_nine_are_not()
    {
        Assert.True(Read(Nominal.Take(10)).IsGood);
        Assert.Equal(FileFault.TooLittle, Assert.Single(Read(Nominal.Take(9)).Problems).Fault);
    }

    [Fact]
    public void A_response_is_not_taken_for_a_noise_spectrum() =>
        Assert.Contains(
            "level_dbv",
            Assert.Single(NoiseSpectrumFile.Read("frequency_hz,level_db\n20,0\n".Utf8()).Problems).Message,
            StringComparison.Ordinal
        );
}
