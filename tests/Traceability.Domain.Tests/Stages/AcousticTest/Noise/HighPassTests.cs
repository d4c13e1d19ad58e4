using Traceability.Domain.Stages.AcousticTest.Noise;

namespace Traceability.Domain.Tests.Stages.AcousticTest.Noise;

public class HighPassTests
{
    /// <summary>
    /// |H|² = 1/(1 + (fc/f)^8): -3.01 dB at the corner, -24.1 dB an octave below it, -80 dB a decade below, nothing an octave above.
    /// </summary>
    [Theory]
    [InlineData(20, -80, 0.5)]
    [InlineData(100, -24.10, 0.05)]
    [InlineData(200, -3.01, 0.02)]
    [InlineData(400, -0.017, 0.01)]
    [InlineData(1000, 0, 0.01)]
    public void A_sine_loses_what_the_definition_of_the_filter_says(double hz, double db, double within)
    {
        float[] sine = [.. Enumerable.Range(0, 96_000).Select(i => (float)Math.Sin(2 * Math.PI * hz * i / Recording.RateHz))];
        var passed = HighPass.Of(sine, Recording.RateHz)[48_000..];

        Assert.Equal(db, 10 * Math.Log10(2 * passed.Average(v => v * v)), within);
    }

    [Fact]
    public void A_constant_and_its_beginning_leave_nothing() =>
        Assert.All(HighPass.Of(Enumerable.Repeat(0.3f, 5000).ToArray(), Recording.RateHz), v => Assert.Equal(0, v, 1e-12));

    [Fact]
    public void As_many_samples_come_out_as_went_in()
    {
        Assert.Empty(HighPass.Of([], Recording.RateHz));
        Assert.Single(HighPass.Of([1], Recording.RateHz));
        Assert.Equal(7000, HighPass.Of(new float[7000], Recording.RateHz).Length);
    }

    [Fact]
    public void A_rate_too_low_to_have_anything_above_the_corner_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => HighPass.Of([1, 2], 999));
}
