using Traceability.Domain.Stages.AcousticTest.Response;

namespace Traceability.Domain.Tests.Stages.AcousticTest.Response;

public class ToleranceMaskTests
{
    private static ToleranceMask Mask(params MaskPoint[] points) => new(points);

    [Fact]
    public void Half_way_in_octaves_is_half_way_in_decibels()
    {
        var mask = Mask(MaskPoint.Symmetric(500, 1), MaskPoint.Symmetric(2000, 3));
        Assert.Equal(2, mask.At(1000)!.Value.UpperDb!.Value, 12);
        Assert.Equal(-2, mask.At(1000)!.Value.LowerDb!.Value, 12);
    }

    [Fact]
    public void Outside_its_corners_a_mask_asks_for_nothing()
    {
        var mask = Mask(MaskPoint.Symmetric(40, 3), MaskPoint.Symmetric(16000, 4));
        Assert.Null(mask.At(39.9));
        Assert.Null(mask.At(16000.1));
        Assert.NotNull(mask.At(40));
        Assert.NotNull(mask.At(16000));
    }

    [Fact]
    public void At_a_step_the_stricter_side_holds()
    {
        var mask = Mask(MaskPoint.Symmetric(100, 3), MaskPoint.Symmetric(200, 3), MaskPoint.Symmetric(200, 1), MaskPoint.Symmetric(400, 1));
        Assert.Equal(3, mask.At(199)!.Value.UpperDb);
        Assert.Equal(1, mask.At(200)!.Value.UpperDb);
        Assert.Equal(-1, mask.At(200)!.Value.LowerDb);
        Assert.Equal(1, mask.At(201)!.Value.UpperDb);
    }

    [Fact]
    public void A_side_left_out_is_not_required()
    {
        var mask = Mask(new(100, null, 2), new(1000, null, 2), new(1000, -1, 1), new(4000, -1, 1));
        Assert.Null(mask.At(500)!.Value.LowerDb);
        Assert.Equal(2, mask.At(500)!.Value.UpperDb);
        Assert.Equal(-1, mask.At(2000)!.Value.LowerDb);
    }

    [Theory]
    [InlineData("the mask has 1 corners; two are the least", 100.0)]
    [InlineData("corner 2: 50 Hz follows 100 Hz; frequencies must rise", 100.0, 50.0)]
    [InlineData("corner 1: 0 is no frequency", 0.0, 50.0)]
    [InlineData("corner 3: 100 Hz stands there more than twice", 100.0, 100.0, 100.0)]
    [InlineData("the mask covers one frequency only", 100.0, 100.0)]
    public void A_broken_mask_names_the_corner(string problem, params double[] frequencies)
    {
        var points = frequencies.Select(f => MaskPoint.Symmetric(f, 1)).ToArray();
        Assert.Equal(problem, ToleranceMask.ProblemWith(points));
        Assert.Throws<ArgumentException>(() => new ToleranceMask(points));
    }

    [Fact]
    public void A_lower_limit_above_the_upper_one_is_refused() =>
        Assert.Equal(
            "corner 2 at 200 Hz: lower limit 2 dB above upper limit 1 dB",
            ToleranceMask.ProblemWith([new(100, -1, 1), new(200, 2, 1)])
        );
}
