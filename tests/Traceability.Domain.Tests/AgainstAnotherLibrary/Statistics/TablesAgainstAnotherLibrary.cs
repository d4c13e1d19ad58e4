using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Tests.Sources;
using static Traceability.Domain.Tests.Sources.Nearness;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Statistics;

/// <summary>Tables of counts.</summary>
public class TablesAgainstAnotherLibrary
{
    [Theory]
    [InlineData(3, 1, 1, 3, 0.485714285714286, 6.40831965819967, 0.211735595446579, 626.243530588814, 0.985714285714286, 0.242857142857143)]
    [InlineData(
        2,
        15,
        10,
        3,
        0.000536724119143436,
        0.04693663904968,
        0.00331716395065736,
        0.363189602356681,
        0.000465180943362905,
        0.999984519018686
    )]
    [InlineData(0, 10, 5, 5, 0.0325077399380805, 0.0, 0.0, 0.836521793917736, 0.0162538699690402, 1.0)]
    [InlineData(
        12,
        5,
        29,
        2,
        0.0802685520741046,
        0.172669646902943,
        0.0145341257270481,
        1.23100329024647,
        0.0445547378350769,
        0.994525206021882
    )]
    [InlineData(
        40,
        160,
        60,
        540,
        0.000473998136049308,
        2.24738497855053,
        1.41095015717296,
        3.55339014392893,
        0.99987973357335,
        0.000287005079102848
    )]
    [InlineData(
        7,
        3,
        0,
        20,
        5.89448865310934e-5,
        double.PositiveInfinity,
        5.45043805605647,
        double.PositiveInfinity,
        1.0,
        5.89448865310934e-5
    )]
    [InlineData(300, 1200, 2500, 21000, 1.06155112643356e-24, 2.09992053739, 1.83185208040597, 2.40179674490605, 1.0, 8.17897092295325e-25)]
    [From(SourceKind.Library, "mpmath 1.3, 30 digits, exact fractions and the defining equations")]
    public void Fisher_exact_test(
        int a,
        int b,
        int c,
        int d,
        double p,
        double oddsRatio,
        double lower,
        double upper,
        double fewer,
        double more
    )
    {
        FisherExactResult result = FisherExact.Test(new FailureTable(a, b, c, d)).Value;
        Near(p, result.P, 1e-10);
        Near(p, FisherExact.TwoSidedP(new FailureTable(a, b, c, d)).Value, 1e-10);
        Near(oddsRatio, result.OddsRatio, 1e-9);
        Near(lower, result.OddsRatioInterval.Lower, 1e-9);
        Near(upper, result.OddsRatioInterval.Upper, 1e-9);
        Near(fewer, result.PFewerHere, 1e-10);
        Near(more, result.PMoreHere, 1e-10);
    }

    [Fact]
    [From(SourceKind.Library, "R (version not noted), chisq.test of its data set HairEyeColor, both sexes together, from memory")]
    public void Chi_square_of_hair_by_eyes()
    {
        ChiSquareIndependenceResult result = ChiSquareIndependence
            .Test([
                [68, 20, 15, 5],
                [119, 84, 54, 29],
                [26, 17, 14, 14],
                [7, 94, 10, 16],
            ])
            .Value;
        Near(138.29, result.Test.Statistic, 1e-4);
        Near(0.279, result.CramersV, 2e-3);
        Assert.Equal(9, result.Test.DegreesOfFreedom);
    }
}
