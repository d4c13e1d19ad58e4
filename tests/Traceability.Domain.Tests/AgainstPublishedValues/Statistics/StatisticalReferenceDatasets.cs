using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.Summaries;
using Traceability.Domain.Quality.Trends;
using Traceability.Domain.Tests.AgainstAnotherLibrary.Statistics;
using Traceability.Domain.Tests.Sources;
using static Traceability.Domain.Tests.Sources.Nearness;

namespace Traceability.Domain.Tests.AgainstPublishedValues.Statistics;

/// <summary>NIST Statistical Reference Datasets (StRD): certified values, from memory.</summary>
public class StatisticalReferenceDatasets
{
    /// <summary>A first value, then two values by turns; all have a large common offset but the second.</summary>
    [Theory]
    [InlineData(new double[] { 10000001, 10000003, 10000002 }, 10000002, 1, -0.5, 1e-14)]
    [InlineData(new[] { 1.2, 1.1, 1.3 }, 1.2, 0.1, -0.999, 1e-12)]
    [InlineData(new[] { 1000000.2, 1000000.1, 1000000.3 }, 1000000.2, 0.1, -0.999, 1e-9)]
    [InlineData(new[] { 10000000.2, 10000000.1, 10000000.3 }, 10000000.2, 0.1, -0.999, 1e-8)]
    [From(SourceKind.Printed, "NIST Statistical Reference Datasets, NumAcc1 to NumAcc4, certified values, from memory")]
    public void Numerical_accuracy(double[] pattern, double mean, double deviation, double autocorrelation, double relative)
    {
        double[] values = pattern[1] == 10000003 ? pattern : [pattern[0], .. Enumerable.Range(0, 1000).Select(i => pattern[1 + i % 2])];
        Near(mean, Sample.Mean(values), 1e-15);
        Near(deviation, Sample.StandardDeviation(values), relative);
        Near(autocorrelation, Autocorrelation.LagOne(values).Value, relative);
    }

    [Fact]
    [From(SourceKind.Printed, "NIST Statistical Reference Datasets, Norris, certified values, from memory")]
    public void Norris()
    {
        Dataset data = Dataset.Read("strd_Norris");
        LinearRegressionResult fit = LinearRegression.Fit(data.Column("x"), data.Column("y")).Value;
        Near(-0.262323073774029, fit.Coefficients[0], 1e-10);
        Near(1.00211681802045, fit.Coefficients[1], 1e-13);
        Near(0.232818234301152, fit.StandardErrors[0], 1e-11);
        Near(0.429796848199937e-3, fit.StandardErrors[1], 1e-11);
        Near(0.884796396144373, fit.ResidualStandardDeviation, 1e-11);
        Near(0.999993745883712, fit.RSquared, 1e-14);
    }

    [Theory]
    [InlineData(0, -3482258.63459582, 890420.383607373)]
    [InlineData(1, 15.0618722713733, 84.9149257747669)]
    [InlineData(2, -0.358191792925910e-1, 0.334910077722432e-1)]
    [InlineData(3, -2.02022980381683, 0.488399681651699)]
    [InlineData(4, -1.03322686717359, 0.214274163161675)]
    [InlineData(5, -0.511041056535807e-1, 0.226073200069370)]
    [InlineData(6, 1829.15146461355, 455.478499142212)]
    [From(SourceKind.Printed, "NIST Statistical Reference Datasets, Longley, certified values, from memory")]
    public void Longley(int coefficient, double value, double error)
    {
        LinearRegressionResult fit = SelfTestCases.Longley();
        Near(value, fit.Coefficients[coefficient], 1e-9);
        Near(error, fit.StandardErrors[coefficient], 1e-9);
    }

    [Fact]
    [From(SourceKind.Printed, "NIST Statistical Reference Datasets, Longley, certified values, from memory")]
    public void Longley_as_a_whole()
    {
        LinearRegressionResult fit = SelfTestCases.Longley();
        Near(304.854073561965, fit.ResidualStandardDeviation, 1e-10);
        Near(0.995479004577296, fit.RSquared, 1e-13);
    }

    [Fact]
    [From(SourceKind.Printed, "NIST Statistical Reference Datasets, SiRstv, certified values, from memory")]
    public void SiRstv()
    {
        OneWayAnovaResult result = OneWayAnova.Test(Dataset.Read("strd_SiRstv").Groups("y", "g")).Value;
        Near(0.0511462616, result.SumOfSquaresBetween, 1e-10);
        Near(0.21663656, result.SumOfSquaresWithin, 1e-10);
        Near(1.18046237440255, result.Test.Statistic, 1e-10);
        Near(0.190999039051129, result.EtaSquared, 1e-10);
        Near(0.104076068334656, result.ResidualStandardDeviation, 1e-10);
    }

    [Fact]
    [From(SourceKind.Definition, "the idea of the StRD sets SmLs: the same values far from zero give the same F")]
    public void Analysis_of_variance_keeps_its_digits_far_from_zero()
    {
        double[][] near =
        [
            [4, 3, 5, 4, 4],
            [5, 4, 6, 5, 4],
            [3, 4, 4, 2, 3],
        ];
        double[][] far = [.. near.Select(g => g.Select(x => x + 1e12).ToArray())];
        Near(OneWayAnova.Test(near).Value.Test.Statistic, OneWayAnova.Test(far).Value.Test.Statistic, 1e-12);
    }
}
