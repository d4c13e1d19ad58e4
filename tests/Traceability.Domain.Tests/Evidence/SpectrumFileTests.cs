using System.Globalization;
using Traceability.Domain.Evidence;
using static Traceability.Domain.Tests.Evidence.EvidenceText;

namespace Traceability.Domain.Tests.Evidence;

public class FrequencyResponseFileTests
{
    private static ParsedFile<FrequencyResponse> Read(params string[] lines) => FrequencyResponseFile.Read(Lines(["frequency_hz,level_db", .. lines]));

    [Theory]
    [InlineData("100", "frequency_hz 100 is given twice")]
    [InlineData("99.9", "frequency_hz 99.9 comes after 100: sort by rising frequency")]
    [InlineData("0", "not between 1 and 200000")]
    [InlineData("-100", "not between 1 and 200000")]
    [InlineData("0.99", "not between 1 and 200000")]
    [InlineData("200001", "not between 1 and 200000")]
    [InlineData("nan", "not a plain number")]
    public void A_frequency_repeated_out_of_order_or_out_of_range_is_refused(string frequency, string because)
    {
        var problem = Assert.Single(Read("20,0", "100,0", frequency + ",0").Problems);

        Assert.Equal(4, problem.Line);
        Assert.Contains(because, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Three_points_are_enough_and_two_are_not()
    {
        Assert.True(Read("1,0", "100,-300", "200000,300").IsGood);
        Assert.Equal(FileFault.TooLittle, Assert.Single(Read("1,0", "100,0").Problems).Fault);
    }

    [Theory]
    [InlineData("-300.1")]
    [InlineData("300.1")]
    [InlineData("-inf")]
    public void A_level_that_cannot_be_is_refused(string level) => Assert.Equal(2, Assert.Single(Read("20," + level, "30,0", "40,0").Problems).Line);
}

public class NoiseSpectrumFileTests
{
    // Source: nominal mid-frequencies of one-third-octave bands, 20 Hz to 20 kHz, IEC 61260-1 / ISO 266 (from memory).
    private static readonly double[] Nominal =
    [
        20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000,
        6300, 8000, 10000, 12500, 16000, 20000,
    ];

    private static ParsedFile<NoiseSpectrum> Read(IEnumerable<double> frequencies) => NoiseSpectrumFile.Read(Lines(
        ["frequency_hz,level_dbv", .. frequencies.Select(f => string.Create(CultureInfo.InvariantCulture, $"{f},-120.5"))]));

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
        Assert.Equal("Between 400 Hz and 630 Hz bands are missing or given twice.", Assert.Single(Read(Nominal.Where(f => f != 500)).Problems).ToString());

    [Fact]
    public void A_frequency_between_bands_is_refused() =>
        Assert.Contains("1100 Hz is not the mid-frequency", Read([.. Nominal[..18], 1100, .. Nominal[19..]]).Problems[0].ToString(), StringComparison.Ordinal);

    [Fact]
    public void Ten_bands_are_enough_and_nine_are_not()
    {
        Assert.True(Read(Nominal.Take(10)).IsGood);
        Assert.Equal(FileFault.TooLittle, Assert.Single(Read(Nominal.Take(9)).Problems).Fault);
    }

    [Fact]
    public void A_response_is_not_taken_for_a_noise_spectrum() =>
        Assert.Contains("level_dbv", Assert.Single(NoiseSpectrumFile.Read("frequency_hz,level_db\n20,0\n".Utf8()).Problems).Message, StringComparison.Ordinal);
}
