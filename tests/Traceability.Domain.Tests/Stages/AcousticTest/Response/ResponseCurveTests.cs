using Traceability.Domain.Stages.AcousticTest.Response;

namespace Traceability.Domain.Tests.Stages.AcousticTest.Response;

public class ResponseCurveTests
{
    [Theory]
    [InlineData("the curve has 1 points; two are the least", 100.0)]
    [InlineData("point 2: 100 Hz stands there twice", 100.0, 100.0)]
    [InlineData("point 3: 150 Hz follows 200 Hz; frequencies must rise", 100.0, 200.0, 150.0)]
    [InlineData("point 1: -5 is no frequency", -5.0, 200.0)]
    [InlineData("point 2: NaN is no frequency", 5.0, double.NaN)]
    public void A_broken_curve_names_the_point(string problem, params double[] frequencies)
    {
        ResponsePoint[] points = [.. frequencies.Select(f => new ResponsePoint(f, 0))];
        Assert.Equal(problem, ResponseCurve.ProblemWith(points));
        Assert.Throws<ArgumentException>(() => new ResponseCurve(points));
    }

    [Fact]
    public void A_level_that_is_no_number_is_named() =>
        Assert.Equal("point 2 at 200 Hz: NaN is no level", ResponseCurve.ProblemWith([new(100, 0), new(200, double.NaN)]));

    [Fact]
    public void Between_points_the_line_is_straight_over_octaves_and_outside_there_is_none()
    {
        ResponseCurve curve = new([new(250, 1), new(1000, 5), new(4000, -3)]);
        Assert.Equal(3, curve.LevelAt(500)!.Value, 12);
        Assert.Equal(5, curve.LevelAt(1000));
        Assert.Equal(1, curve.LevelAt(2000)!.Value, 12);
        Assert.Equal(-3, curve.LevelAt(4000));
        Assert.Null(curve.LevelAt(249));
        Assert.Null(curve.LevelAt(4001));
        Assert.Throws<ArgumentOutOfRangeException>(() => curve.LevelAt(0));
    }
}
