using CsCheck;
using Traceability.Domain.Stages.AcousticTest.Response;

namespace Traceability.Domain.Tests.Stages.AcousticTest.Response;

public class CurveMatchTests
{
    [Fact]
    public void Swapping_the_curves_turns_the_mean_and_keeps_the_rest() =>
        Gen.Select(Gen.Double[-5, 5].Array[12], Gen.Double[-5, 5].Array[12])
            .Sample(
                (a, b) =>
                {
                    var (there, back) = (CurveMatch.Of(a, b), CurveMatch.Of(b, a));
                    Assert.Equal(there.MeanDb, -back.MeanDb, 1e-12);
                    Assert.Equal(there.ShapeRmsDb, back.ShapeRmsDb, 1e-12);
                    Assert.Equal(there.GreatestDb, back.GreatestDb, 1e-12);
                }
            );

    [Fact]
    public void A_gain_moves_the_mean_and_not_the_shape()
    {
        var match = CurveMatch.Of([1, 2, 3], [0, 1, 2]);
        Assert.Equal((1, 0, 1), (match.MeanDb, match.ShapeRmsDb, match.GreatestDb));
    }

    [Fact]
    public void Curves_match_in_the_range_asked_for_and_say_where_they_do_not()
    {
        ResponseCurve one = new([new(100, 9), new(1000, 0), new(5000, 1), new(20000, 9)]),
            other = new([new(100, 0), new(20000, 0)]);
        var match = CurveMatch.Of(one, other, 200, 10_000)!.Value;
        Assert.Equal((1, 5000.0), (match.GreatestDb, match.GreatestAtHz));
        Assert.Null(CurveMatch.Of(one, other, 200, 900));
    }

    [Fact]
    public void Rows_of_different_length_are_refused() => Assert.Throws<ArgumentException>(() => CurveMatch.Of([1, 2], [1]));
}
