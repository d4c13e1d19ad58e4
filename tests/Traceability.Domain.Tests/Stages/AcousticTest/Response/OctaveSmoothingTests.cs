using CsCheck;
using Traceability.Domain.Stages.AcousticTest.Response;

namespace Traceability.Domain.Tests.Stages.AcousticTest.Response;

public class OctaveSmoothingTests
{
    [Fact]
    public void A_level_curve_stays_level_whatever_its_grid() =>
        Gen.Select(Gen.Double[1.001, 1.3].Array[30], Gen.Int[1, 24])
            .Sample(
                (steps, perOctave) =>
                {
                    double f = 50;
                    ResponseCurve curve = new([.. steps.Select(step => new ResponsePoint(f *= step, -34))]);
                    Assert.All(OctaveSmoothing.Smooth(curve, perOctave).Points, p => Assert.Equal(-34, p.LevelDb, 1e-9));
                }
            );

    [Fact]
    public void A_fine_linear_grid_and_a_fine_logarithmic_one_agree()
    {
        static double Shape(double f) => 6 * Math.Exp(-Math.Pow(Math.Log(f / 1000) / 0.15, 2));
        ResponseCurve linear = new([.. Enumerable.Range(100, 3900).Select(f => new ResponsePoint(f, Shape(f)))]);
        var grid = Enumerable.Range(0, 4000).Select(i => 100 * Math.Pow(40, i / 3999.0));
        ResponseCurve logarithmic = new([.. grid.Select(f => new ResponsePoint(f, Shape(f)))]);
        Assert.Equal(OctaveSmoothing.LevelAt(logarithmic, 1000, 3)!.Value, OctaveSmoothing.LevelAt(linear, 1000, 3)!.Value, 0.005);
    }

    [Fact]
    public void Outside_the_curve_there_is_nothing() => Assert.Null(OctaveSmoothing.LevelAt(new([new(100, 0), new(200, 0)]), 250, 3));
}
