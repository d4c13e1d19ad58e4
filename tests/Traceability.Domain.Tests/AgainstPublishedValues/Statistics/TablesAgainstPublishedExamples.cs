using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Tests.AgainstAnotherLibrary.Statistics;
using Traceability.Domain.Tests.Sources;
using static Traceability.Domain.Tests.Sources.Nearness;

namespace Traceability.Domain.Tests.AgainstPublishedValues.Statistics;

/// <summary>Two-by-two tables, stratified or not, against printed examples.</summary>
public class TablesAgainstPublishedExamples
{
    /// <summary>Twice 1.2 thousand million is more than an <c>int</c> holds.</summary>
    [Fact]
    [From(SourceKind.Definition, "half of each group failed, or 1 in 2 against 1 in 3")]
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

    [Fact]
    [From(SourceKind.Printed, "R's help of mantelhaen.test, data set Rabbits, printed results, from memory")]
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

    /// <summary>F9-002 has its p.</summary>
    [Fact]
    [From(SourceKind.Printed, "R's help of mantelhaen.test, UCBAdmissions, X-squared = 1.4269, from memory")]
    public void Cochran_Mantel_Haenszel_statistic_of_the_admissions() =>
        Near(1.4269, ComparisonCases.Admissions().ChiSquareCorrected, 4e-5);

    [Fact]
    [From(SourceKind.Printed, "A. Agresti, Categorical Data Analysis, party by sex, as in R's help of chisq.test, from memory")]
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

    [Theory]
    [InlineData(10, 0, 0, 10, 1)]
    [InlineData(0, 10, 10, 0, -1)]
    [InlineData(5, 5, 5, 5, 0)]
    [InlineData(5, 5, 0, 0, 0)]
    [From(SourceKind.Definition, "one column tells the other, or says nothing about it")]
    public void Phi_runs_from_minus_one_to_one(int a, int b, int c, int d, double expected) =>
        Near(expected, EffectSize.Phi(a, b, c, d), 1e-12);
}
