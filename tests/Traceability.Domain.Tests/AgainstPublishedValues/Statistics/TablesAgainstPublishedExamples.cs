using Traceability.Domain.Quality.Comparisons;
using static Traceability.Domain.Tests.AgainstPublishedValues.Statistics.Nearness;

namespace Traceability.Domain.Tests.AgainstPublishedValues.Statistics;

/// <summary>Two-by-two tables, stratified or not, against outside values; the source stands at each test.</summary>
public class TablesAgainstPublishedExamples
{
    /// <summary>Source: exact fractions and the defining equations solved with mpmath 1.3, 30 digits.</summary>
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

    /// <summary>
    /// Twice 1.2 thousand million is more than an <c>int</c> holds. Source: the definitions; half of each group failed, or 1 in 2 against 1
    /// in 3.
    /// </summary>
    [Fact]
    public void A_table_of_thousands_of_millions_does_not_wrap()
    {
        const int many = 1_200_000_000;
        var even = new FailureTable(many, many, many, many);
        Assert.Equal(
            (2L * many, 2L * many, 2L * many, 2L * many, 4L * many),
            (even.Here, even.Elsewhere, even.Failed, even.Passed, even.Total)
        );
        Assert.Null(even.Missing());
        Near(1, FisherExact.TwoSidedP(even).Value, 1e-6);
        CochranMantelHaenszelResult odds = CochranMantelHaenszel.Test([even, new(many, many, many / 2, many)]).Value;
        Near((many / 4.0 + many * (many / 3.5 / many)) / (many / 4.0 + many / 7.0), odds.CommonOddsRatio, 1e-12);
    }

    /// <summary>Source: R's help of mantelhaen.test, data set Rabbits (from memory; its printed results agree).</summary>
    [Fact]
    public void Cochran_Mantel_Haenszel_of_the_penicillin_experiment()
    {
        CochranMantelHaenszelResult result = CochranMantelHaenszel
            .Test([new(0, 0, 6, 5), new(3, 0, 3, 6), new(6, 2, 0, 4), new(5, 6, 1, 0), new(2, 5, 0, 0)])
            .Value;
        Near(3.9286, result.ChiSquareCorrected, 1e-4);
        Near(0.04747, result.PCorrected, 1e-4);
        Near(7, result.CommonOddsRatio, 1e-12);
        Near(1.026713, result.OddsRatioInterval.Lower, 1e-6);
        Near(47.725133, result.OddsRatioInterval.Upper, 1e-6);
        Assert.Equal((3, 2), (result.StrataUsed, result.StrataWithoutComparison));
    }

    /// <summary>Source: R's help of mantelhaen.test prints X-squared = 1.4269 for UCBAdmissions (from memory; F9-002 has its p).</summary>
    [Fact]
    public void Cochran_Mantel_Haenszel_statistic_of_the_admissions() =>
        Near(1.4269, ComparisonCases.Admissions().ChiSquareCorrected, 4e-5);

    /// <summary>Source: A. Agresti, Categorical Data Analysis, party by sex, as in R's help of chisq.test (from memory).</summary>
    [Fact]
    public void Chi_square_of_party_by_sex()
    {
        ChiSquareIndependenceResult result = ChiSquareIndependence
            .Test([
                [762, 327, 468],
                [484, 239, 477],
            ])
            .Value;
        Near(30.07, result.Test.Statistic, 1e-4);
        Near(2.954e-7, result.Test.P, 1e-3);
        Assert.Equal(2, result.Test.DegreesOfFreedom);
    }

    /// <summary>Source: R data set HairEyeColor (both sexes together), X-squared = 138.29, Cramer's V = 0.279 (from memory).</summary>
    [Fact]
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

    /// <summary>Source: the definition. One column tells the other, or says nothing about it.</summary>
    [Theory]
    [InlineData(10, 0, 0, 10, 1)]
    [InlineData(0, 10, 10, 0, -1)]
    [InlineData(5, 5, 5, 5, 0)]
    [InlineData(5, 5, 0, 0, 0)]
    public void Phi_runs_from_minus_one_to_one(int a, int b, int c, int d, double expected) =>
        Near(expected, EffectSize.Phi(a, b, c, d), 1e-12);
}
