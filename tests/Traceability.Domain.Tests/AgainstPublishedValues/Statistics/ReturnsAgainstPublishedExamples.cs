using Traceability.Domain.Quality.Capability;
using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.Returns;
using Traceability.Domain.Tests.AgainstAnotherLibrary.Statistics;
using Traceability.Domain.Tests.Sources;
using static Traceability.Domain.Tests.Sources.Nearness;

namespace Traceability.Domain.Tests.AgainstPublishedValues.Statistics;

/// <summary>Survival and normality against printed examples.</summary>
public class ReturnsAgainstPublishedExamples
{
    private const string Remissions = "Freireich and others (1963), as printed in Kleinbaum, Survival Analysis, from memory";

    internal static readonly Lifetime[] Treated = Lifetimes("6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+");
    internal static readonly Lifetime[] Placebo = Lifetimes("1 1 2 2 3 4 4 5 5 8 8 8 8 11 11 12 12 15 17 22 23");

    /// <summary>NIST e-Handbook 8.4.1.2: ten failed, ten still running at 500 h.</summary>
    internal static readonly Lifetime[] FailedAndCensored =
    [
        .. Lifetimes("54 187 216 240 244 335 361 373 375 386"),
        .. Enumerable.Repeat(new Lifetime(500, false), 10),
    ];

    [Theory]
    [InlineData(6, 0.8571, 0.0764)]
    [InlineData(7, 0.8067, 0.0869)]
    [InlineData(10, 0.7529, 0.0963)]
    [InlineData(13, 0.6902, 0.1068)]
    [InlineData(16, 0.6275, 0.1141)]
    [InlineData(22, 0.5378, 0.1282)]
    [InlineData(23, 0.4482, 0.1346)]
    [From(SourceKind.Printed, Remissions)]
    public void Kaplan_Meier_of_remissions(double time, double survival, double error)
    {
        SurvivalStep step = KaplanMeier.Of(Treated).Value.Steps.Single(s => s.Time == time);
        Printed(survival, step.Survival, 4);
        Printed(error, step.StandardError!.Value, 4);
    }

    [Fact]
    [From(SourceKind.Printed, Remissions)]
    public void Log_rank_of_remissions()
    {
        ChiSquareResult result = LogRank.Test([Treated, Placebo]).Value;
        Printed(16.79, result.Statistic, 2);
        Near(4.17e-5, result.P, 1e-3);
    }

    /// <summary>Its optimiser stopped one part in a million short of the likelihood equations.</summary>
    [Fact]
    [From(SourceKind.Printed, "NIST e-Handbook of Statistical Methods, 8.4.1.2, from memory")]
    public void Weibull_of_the_handbook()
    {
        WeibullFit fit = WeibullFit.Of(FailedAndCensored).Value;
        Printed(1.7208, fit.Shape, 4);
        Near(606.5280, fit.Scale, 1e-6);
    }

    [Fact]
    [From(SourceKind.Printed, "An Introduction to R, chapter 8, the eruptions longer than 3 minutes, from memory")]
    public void Shapiro_Wilk_of_long_eruptions()
    {
        ShapiroWilkResult result = ShapiroWilk.Test([.. Dataset.Read("faithful").Column("eruptions").Where(t => t > 3)]).Value;
        Printed(0.9793, result.W, 4);
        Printed(0.01052, result.P, 5);
    }

    /// <summary>For one failure ending at a time: -2 ln(1 - p).</summary>
    [Fact]
    [From(SourceKind.Definition, "closed form: chi-square with 2 degrees of freedom is exponential")]
    public void Exponential_life_with_two_degrees_of_freedom()
    {
        ExponentialLife life = ExponentialLife.Of(1, 100, confidence: 0.90).Value;
        Near(100 / -Math.Log(0.95), life.Interval.Upper, 1e-12);
        Near(100 / -Math.Log(0.10), ExponentialLife.Of(0, 100, confidence: 0.90).Value.Interval.Lower, 1e-12);
    }

    private static Lifetime[] Lifetimes(string text) =>
        [
            .. text.Split(' ')
                .Select(t => new Lifetime(
                    double.Parse(t.TrimEnd('+'), System.Globalization.CultureInfo.InvariantCulture),
                    !t.EndsWith('+')
                )),
        ];
}
