using Traceability.Domain.Stages.AcousticTest.Noise;
using Traceability.Domain.Stages.AcousticTest.Response;
using Traceability.Domain.Tests.Sources;

namespace Traceability.Domain.Tests.AgainstPublishedValues.Physics;

/// <summary>Bands and weightings as printed in the standards.</summary>
public class BandTableTests
{
    [Theory]
    [InlineData(20, 19.953)]
    [InlineData(25, 25.119)]
    [InlineData(31.5, 31.623)]
    [InlineData(40, 39.811)]
    [InlineData(50, 50.119)]
    [InlineData(63, 63.096)]
    [InlineData(80, 79.433)]
    [InlineData(100, 100.00)]
    [InlineData(125, 125.89)]
    [InlineData(160, 158.49)]
    [InlineData(200, 199.53)]
    [InlineData(250, 251.19)]
    [InlineData(315, 316.23)]
    [InlineData(400, 398.11)]
    [InlineData(500, 501.19)]
    [InlineData(630, 630.96)]
    [InlineData(800, 794.33)]
    [InlineData(1000, 1000.0)]
    [InlineData(1250, 1258.9)]
    [InlineData(1600, 1584.9)]
    [InlineData(2000, 1995.3)]
    [InlineData(2500, 2511.9)]
    [InlineData(3150, 3162.3)]
    [InlineData(4000, 3981.1)]
    [InlineData(5000, 5011.9)]
    [InlineData(6300, 6309.6)]
    [InlineData(8000, 7943.3)]
    [InlineData(10000, 10000)]
    [InlineData(12500, 12589)]
    [InlineData(16000, 15849)]
    [InlineData(20000, 19953)]
    [From(SourceKind.Printed, "IEC 61260-1:2014, table E.1, exact mid-band frequencies beside their nominal ones, from memory")]
    public void Exact_third_octaves_agree_with_the_standard_to_five_digits(double nominalHz, double exactHz) =>
        Assert.Equal(1, OctaveBand.OfNominalThird(nominalHz)!.Value.MidHz / exactHz, 5e-5);

    [Theory]
    [InlineData(-5, 31.623)]
    [InlineData(-4, 63.096)]
    [InlineData(-3, 125.89)]
    [InlineData(-2, 251.19)]
    [InlineData(-1, 501.19)]
    [InlineData(1, 1995.3)]
    [InlineData(2, 3981.1)]
    [InlineData(3, 7943.3)]
    [InlineData(4, 15849)]
    [From(SourceKind.Printed, "IEC 61260-1:2014, octave bands, exact mid-band frequencies, from memory")]
    public void Exact_octaves_agree_with_the_standard(int index, double exactHz) =>
        Assert.Equal(1, OctaveBand.At(index, 1).MidHz / exactHz, 5e-5);

    [Fact]
    [From(SourceKind.Printed, "IEC 61672-1:2013, annex E, normalisation constants, from memory")]
    public void Normalisations_of_the_weightings_are_the_printed_ones()
    {
        Assert.Equal(-2.000, FrequencyWeighting.ANormalisationDb, 0.0005);
        Assert.Equal(-0.062, FrequencyWeighting.CNormalisationDb, 0.0005);
    }

    [Fact]
    [From(SourceKind.Definition, "IEC 61260-1 has no nominal frequency of 1001 Hz")]
    public void A_frequency_that_is_no_label_has_no_band() => Assert.Null(OctaveBand.OfNominalThird(1001));
}
