using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.Trends;
using static Traceability.Domain.Tests.AgainstPublishedValues.Statistics.Nearness;

namespace Traceability.Domain.Tests.AgainstPublishedValues.Statistics;

/// <summary>Comparisons of groups of values against printed examples; data and results from memory, and they agree.</summary>
public class GroupComparisonsAgainstPublishedExamples
{
    private static readonly double[][] PlantGrowth =
    [
        [4.17, 5.58, 5.18, 6.11, 4.50, 4.61, 5.17, 4.53, 5.33, 5.14],
        [4.81, 4.17, 4.41, 3.59, 5.87, 3.83, 6.03, 4.89, 4.32, 4.69],
        [6.31, 5.12, 5.54, 5.50, 5.37, 5.29, 4.92, 6.15, 5.80, 5.26],
    ];

    private static readonly double[][] Sleep =
    [
        [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0],
        [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4],
    ];

    /// <summary>Source: R data set PlantGrowth, summary(aov(weight ~ group)).</summary>
    [Fact]
    public void Analysis_of_variance_of_plant_growth()
    {
        OneWayAnovaResult result = OneWayAnova.Test(PlantGrowth).Value;
        Printed(3.766, result.SumOfSquaresBetween, 3);
        Printed(10.492, result.SumOfSquaresWithin, 3);
        Printed(4.846, result.Test.Statistic, 3);
        Printed(0.0159, result.Test.P, 4);
        Printed(0.2641, result.EtaSquared, 4);
    }

    /// <summary>Source: R data set PlantGrowth, oneway.test(weight ~ group).</summary>
    [Fact]
    public void Welch_analysis_of_variance_of_plant_growth()
    {
        VarianceRatioResult result = WelchAnova.Test(PlantGrowth).Value;
        Printed(5.181, result.Statistic, 3);
        Printed(17.128, result.DenominatorDf, 3);
        Printed(0.01739, result.P, 5);
    }

    /// <summary>Source: R data set PlantGrowth, kruskal.test(weight ~ group).</summary>
    [Fact]
    public void Kruskal_Wallis_of_plant_growth()
    {
        ChiSquareResult result = KruskalWallis.Test(PlantGrowth).Value;
        Printed(7.9882, result.Statistic, 4);
        Printed(0.01842, result.P, 5);
    }

    /// <summary>Source: Hollander and Wolfe, Nonparametric Statistical Methods, as in R's help of kruskal.test.</summary>
    [Fact]
    public void Kruskal_Wallis_of_mucociliary_efficiency()
    {
        ChiSquareResult result = KruskalWallis
            .Test([
                [2.9, 3.0, 2.5, 2.6, 3.2],
                [3.8, 2.7, 4.0, 2.4],
                [2.8, 3.4, 3.7, 2.2, 2.0],
            ])
            .Value;
        Printed(0.77143, result.Statistic, 5);
        Printed(0.68, result.P, 2);
    }

    /// <summary>Source: R data set sleep, t.test(extra ~ group).</summary>
    [Fact]
    public void Welch_t_test_of_sleep()
    {
        MeanDifferenceResult result = WelchTTest.Test(Sleep[0], Sleep[1]).Value;
        Printed(-1.8608, result.Statistic, 4);
        Printed(17.776, result.DegreesOfFreedom, 3);
        Printed(0.07939, result.P, 5);
        Printed(-3.3654832, result.DifferenceInterval.Lower, 7);
        Printed(0.2054832, result.DifferenceInterval.Upper, 7);
    }

    /// <summary>Source: R data set sleep, oneway.test(extra ~ group): for two groups the square of Welch's t.</summary>
    [Fact]
    public void Welch_analysis_of_variance_of_sleep()
    {
        VarianceRatioResult result = WelchAnova.Test(Sleep).Value;
        Printed(3.4626, result.Statistic, 4);
        Printed(17.776, result.DenominatorDf, 3);
        Near(WelchTTest.Test(Sleep[0], Sleep[1]).Value.P, result.P, 1e-12);
    }

    /// <summary>Source: NIST e-Handbook 7.4.3.3, three groups of five.</summary>
    [Fact]
    public void Analysis_of_variance_of_the_handbook()
    {
        OneWayAnovaResult result = OneWayAnova
            .Test([
                [6.9, 5.4, 5.8, 4.6, 4.0],
                [8.3, 6.8, 7.8, 9.2, 6.5],
                [8.0, 10.5, 8.1, 6.9, 9.3],
            ])
            .Value;
        Printed(27.897, result.SumOfSquaresBetween, 3);
        Printed(17.452, result.SumOfSquaresWithin, 3);
        Printed(9.59, result.Test.Statistic, 2);
    }

    /// <summary>Source: Hollander and Wolfe, as in R's help of cor.test: rho = 0.6.</summary>
    [Fact]
    public void Spearman_of_tuna_lightness() =>
        Near(
            0.6,
            SpearmanCorrelation
                .Of([44.4, 45.9, 41.9, 53.3, 44.7, 44.1, 50.7, 45.2, 60.1], [2.6, 3.1, 2.5, 5.0, 3.6, 4.0, 5.2, 2.8, 3.8])
                .Value.Rho,
            1e-12
        );

    /// <summary>Source: the definition of Cliff's delta, counted by hand.</summary>
    [Theory]
    [InlineData(new double[] { 4, 5, 6 }, new double[] { 1, 2, 3 }, 1)]
    [InlineData(new double[] { 1, 2, 3 }, new double[] { 4, 5, 6 }, -1)]
    [InlineData(new double[] { 1, 3 }, new double[] { 2, 2 }, 0)]
    [InlineData(new double[] { 2, 3, 3 }, new double[] { 1, 3 }, 1.0 / 3)]
    public void Cliffs_delta_counts_pairs(double[] first, double[] second, double expected) =>
        Near(expected, EffectSize.CliffsDelta(first, second).Value, 1e-12);

    /// <summary>Source: the definition of Cohen's d, by hand: means 2 and 5, pooled s = 1.</summary>
    [Fact]
    public void Cohens_d_is_the_difference_in_standard_deviations() => Near(-3, EffectSize.CohensD([1, 2, 3], [4, 5, 6]).Value, 1e-12);
}
