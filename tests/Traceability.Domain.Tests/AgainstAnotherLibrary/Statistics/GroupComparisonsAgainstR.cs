using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Tests.Sources;
using static Traceability.Domain.Tests.Sources.Nearness;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Statistics;

/// <summary>Comparisons of groups of values on data sets of R; data and results from memory, and they agree.</summary>
public class GroupComparisonsAgainstR
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

    [Fact]
    [From(SourceKind.Library, "R (version not noted), summary(aov(weight ~ group)), data set PlantGrowth, from memory")]
    public void Analysis_of_variance_of_plant_growth()
    {
        OneWayAnovaResult result = OneWayAnova.Test(PlantGrowth).Value;
        Printed(3.766, result.SumOfSquaresBetween, 3);
        Printed(10.492, result.SumOfSquaresWithin, 3);
        Printed(4.846, result.Test.Statistic, 3);
        Printed(0.0159, result.Test.P, 4);
        Printed(0.2641, result.EtaSquared, 4);
    }

    [Fact]
    [From(SourceKind.Library, "R (version not noted), oneway.test(weight ~ group), data set PlantGrowth, from memory")]
    public void Welch_analysis_of_variance_of_plant_growth()
    {
        VarianceRatioResult result = WelchAnova.Test(PlantGrowth).Value;
        Printed(5.181, result.Statistic, 3);
        Printed(17.128, result.DenominatorDf, 3);
        Printed(0.01739, result.P, 5);
    }

    [Fact]
    [From(SourceKind.Library, "R (version not noted), kruskal.test(weight ~ group), data set PlantGrowth, from memory")]
    public void Kruskal_Wallis_of_plant_growth()
    {
        ChiSquareResult result = KruskalWallis.Test(PlantGrowth).Value;
        Printed(7.9882, result.Statistic, 4);
        Printed(0.01842, result.P, 5);
    }

    [Fact]
    [From(SourceKind.Library, "R (version not noted), t.test(extra ~ group), data set sleep, from memory")]
    public void Welch_t_test_of_sleep()
    {
        MeanDifferenceResult result = WelchTTest.Test(Sleep[0], Sleep[1]).Value;
        Printed(-1.8608, result.Statistic, 4);
        Printed(17.776, result.DegreesOfFreedom, 3);
        Printed(0.07939, result.P, 5);
        Printed(-3.3654832, result.DifferenceInterval.Lower, 7);
        Printed(0.2054832, result.DifferenceInterval.Upper, 7);
    }

    /// <summary>For two groups the square of Welch's t.</summary>
    [Fact]
    [From(SourceKind.Library, "R (version not noted), oneway.test(extra ~ group), data set sleep, from memory")]
    public void Welch_analysis_of_variance_of_sleep()
    {
        VarianceRatioResult result = WelchAnova.Test(Sleep).Value;
        Printed(3.4626, result.Statistic, 4);
        Printed(17.776, result.DenominatorDf, 3);
        Near(WelchTTest.Test(Sleep[0], Sleep[1]).Value.P, result.P, 1e-12);
    }
}
