using CsCheck;
using Traceability.Domain.Stages.AcousticTest.Directions;
using Traceability.Domain.Stages.AcousticTest.Response;

namespace Traceability.Domain.Tests.Stages.AcousticTest.Directions;

public class DirectivityTests
{
    [Fact]
    public void A_fine_polar_gives_the_analytic_index() =>
        Gen.Double[0, 1]
            .Sample(a =>
            {
                double Level(int degrees) => 20 * Math.Log10(Math.Max(1e-6, Math.Abs(a + (1 - a) * Math.Cos(degrees * Math.PI / 180))));
                PolarPoint[] polar = [.. Enumerable.Range(0, 181).Select(degrees => new PolarPoint(degrees, Level(degrees)))];
                Assert.Equal(new FirstOrderPattern(a).DirectivityIndexDb, Directivity.IndexDb(polar), 0.001);
            });

    [Fact]
    public void Uneven_angles_weigh_by_their_zones()
    {
        PolarPoint[] omni = [new(0, -3), new(10, -3), new(95, -3), new(180, -3)];
        Assert.Equal(0, Directivity.IndexDb(omni), 1e-12);
    }

    [Fact]
    public void A_polar_that_does_not_go_round_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Directivity.IndexDb([new(0, 0), new(90, 0)]));
        Assert.Throws<ArgumentException>(() => Directivity.IndexDb([new(0, 0), new(90, 0), new(170, 0)]));
        Assert.Throws<ArgumentException>(() => Directivity.IndexDb([new(0, 0), new(90, double.NegativeInfinity), new(180, 0)]));
    }

    [Fact]
    public void Front_to_back_needs_both_curves()
    {
        ResponseCurve front = new([new(100, 0), new(1000, 0)]),
            back = new([new(500, -20), new(1000, -24)]);
        Assert.Equal(24, Directivity.FrontToBackDb(front, back, 1000));
        Assert.Null(Directivity.FrontToBackDb(front, back, 200));
    }
}
