using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.Trends;
using Traceability.Domain.Tests.Sources;
using static Traceability.Domain.Tests.Sources.Nearness;

namespace Traceability.Domain.Tests.AgainstPublishedValues.Statistics;

/// <summary>Comparisons of groups of values against printed examples.</summary>
public class GroupComparisonsAgainstPublishedExamples
{
    [Fact]
    [From(SourceKind.Printed, "Hollander and Wolfe, Nonparametric Statistical Methods, as in R's help of kruskal.test, from memory")]
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

    [Fact]
    [From(SourceKind.Printed, "NIST e-Handbook of Statistical Methods, 7.4.3.3, three groups of five, from memory")]
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

    [Fact]
    [From(SourceKind.Printed, "Hollander and Wolfe, Nonparametric Statistical Methods, as in R's help of cor.test, from memory")]
    public void Spearman_of_tuna_lightness() =>
        Near(
            0.6,
            SpearmanCorrelation
                .Of([44.4, 45.9, 41.9, 53.3, 44.7, 44.1, 50.7, 45.2, 60.1], [2.6, 3.1, 2.5, 5.0, 3.6, 4.0, 5.2, 2.8, 3.8])
                .Value.Rho,
            1e-12
        );

    [Theory]
    [InlineData(new double[] { 4, 5, 6 }, new double[] { 1, 2, 3 }, 1)]
    [InlineData(new double[] { 1, 2, 3 }, new double[] { 4, 5, 6 }, -1)]
    [InlineData(new double[] { 1, 3 }, new double[] { 2, 2 }, 0)]
    [InlineData(new double[] { 2, 3, 3 }, new double[] { 1, 3 }, 1.0 / 3)]
    [From(SourceKind.Definition, "Cliff's delta, pairs counted by hand")]
    public void Cliffs_delta_counts_pairs(double[] first, double[] second, double expected) =>
        Near(expected, EffectSize.CliffsDelta(first, second).Value, 1e-12);

    [Fact]
    [From(SourceKind.Definition, "Cohen's d by hand: means 2 and 5, pooled s = 1")]
    public void Cohens_d_is_the_difference_in_standard_deviations() => Near(-3, EffectSize.CohensD([1, 2, 3], [4, 5, 6]).Value, 1e-12);
}
