using Traceability.Domain.Quality;
using Traceability.Domain.Quality.Intervals;
using Traceability.Domain.Quality.ManyTests;
using Traceability.Domain.Tests.Sources;
using static Traceability.Domain.Tests.Sources.Nearness;

namespace Traceability.Domain.Tests.AgainstPublishedValues.Statistics;

/// <summary>Intervals of proportions and adjusted p-values against printed examples.</summary>
public class ProportionsAgainstPublishedExamples
{
    [Theory]
    [InlineData(81, 263, 0.2553, 0.3662)]
    [InlineData(15, 148, 0.0624, 0.1605)]
    [InlineData(0, 20, 0.0000, 0.1611)]
    [InlineData(1, 29, 0.0061, 0.1718)]
    [From(SourceKind.Printed, "R. G. Newcombe, Statistics in Medicine 17 (1998), table I, score method without correction, from memory")]
    public void Wilson(int k, int n, double lower, double upper)
    {
        Interval interval = WilsonInterval.Of(k, n).Value;
        Printed(lower, interval.Lower, 4);
        Printed(upper, interval.Upper, 4);
    }

    [Theory]
    [InlineData(81, 263, 0.2527, 0.3676)]
    [InlineData(15, 148, 0.0578, 0.1617)]
    [InlineData(0, 20, 0.0000, 0.1684)]
    [InlineData(1, 29, 0.0009, 0.1776)]
    [From(SourceKind.Printed, "R. G. Newcombe, Statistics in Medicine 17 (1998), table I, exact method, from memory")]
    public void Clopper_Pearson(int k, int n, double lower, double upper)
    {
        Interval interval = ClopperPearsonInterval.Of(k, n).Value;
        Printed(lower, interval.Lower, 4);
        Printed(upper, interval.Upper, 4);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(1000)]
    [From(SourceKind.Definition, "closed forms, k = 0: 1 - (a/2)^(1/n); k = n: (a/2)^(1/n)")]
    public void Clopper_Pearson_at_the_edges(int n)
    {
        Near(1 - Math.Pow(0.025, 1.0 / n), ClopperPearsonInterval.Of(0, n).Value.Upper, 1e-12);
        Near(Math.Pow(0.025, 1.0 / n), ClopperPearsonInterval.Of(n, n).Value.Lower, 1e-12);
    }

    [Theory]
    [InlineData(new[] { 0.01, 0.02, 0.03, 0.04 }, new[] { 0.04, 0.06, 0.06, 0.06 })]
    [InlineData(new[] { 0.04, 0.01, 0.03, 0.005 }, new[] { 0.06, 0.03, 0.06, 0.02 })]
    [InlineData(new[] { 0.5, 0.9 }, new[] { 1.0, 1.0 })]
    [InlineData(new double[0], new double[0])]
    [From(SourceKind.Definition, "Holm's definition, by hand")]
    public void Holm_steps_down(double[] p, double[] expected) =>
        Assert.All(Holm.Adjust(p).Zip(expected), pair => Near(pair.Second, pair.First, 1e-12));

    [Theory]
    [InlineData(new[] { 0.01, 0.02, 0.03, 0.04 }, new[] { 0.04, 0.04, 0.04, 0.04 })]
    [InlineData(new[] { 0.001, 0.8 }, new[] { 0.002, 0.8 })]
    [InlineData(new double[0], new double[0])]
    [From(SourceKind.Definition, "Benjamini and Hochberg's definition, by hand")]
    public void Benjamini_Hochberg_steps_up(double[] p, double[] expected) =>
        Assert.All(BenjaminiHochberg.Adjust(p).Zip(expected), pair => Near(pair.Second, pair.First, 1e-12));
}
