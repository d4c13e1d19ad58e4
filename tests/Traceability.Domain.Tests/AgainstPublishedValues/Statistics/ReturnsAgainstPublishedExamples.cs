using Traceability.Domain.Quality.Capability;
using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.Returns;
using static Traceability.Domain.Tests.AgainstPublishedValues.Statistics.Nearness;

namespace Traceability.Domain.Tests.AgainstPublishedValues.Statistics;

/// <summary>Survival and normality against printed examples; data and results from memory unless vendored, and they agree.</summary>
public class ReturnsAgainstPublishedExamples
{
    private static readonly Lifetime[] Treated = Lifetimes("6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+");
    private static readonly Lifetime[] Placebo = Lifetimes("1 1 2 2 3 4 4 5 5 8 8 8 8 11 11 12 12 15 17 22 23");

    /// <summary>Source: the leukaemia remission data of Freireich and others (1963), as printed in Kleinbaum, Survival Analysis.</summary>
    [Theory]
    [InlineData(6, 0.8571, 0.0764)]
    [InlineData(7, 0.8067, 0.0869)]
    [InlineData(10, 0.7529, 0.0963)]
    [InlineData(13, 0.6902, 0.1068)]
    [InlineData(16, 0.6275, 0.1141)]
    [InlineData(22, 0.5378, 0.1282)]
    [InlineData(23, 0.4482, 0.1346)]
    public void Kaplan_Meier_of_remissions(double time, double survival, double error)
    {
        SurvivalStep step = KaplanMeier.Of(Treated).Value.Steps.Single(s => s.Time == time);
        Printed(survival, step.Survival, 4);
        Printed(error, step.StandardError!.Value, 4);
    }

    /// <summary>Source: the same.</summary>
    [Fact]
    public void Log_rank_of_remissions()
    {
        ChiSquareResult result = LogRank.Test([Treated, Placebo]).Value;
        Printed(16.79, result.Statistic, 2);
        Near(4.17e-5, result.P, 1e-3);
    }

    /// <summary>Source: R, survfit on the same data and on survival::aml and survival::lung.</summary>
    [Fact]
    public void Median_times()
    {
        Assert.Equal(23, KaplanMeier.Of(Treated).Value.MedianTime);
        Assert.Equal(8, KaplanMeier.Of(Placebo).Value.MedianTime);
        Assert.Equal(31, KaplanMeier.Of(YieldAndReturnCases.Aml("Maintained")).Value.MedianTime);
        Assert.Equal(23, KaplanMeier.Of(YieldAndReturnCases.Aml("Nonmaintained")).Value.MedianTime);
        Assert.Equal(310, KaplanMeier.Of(YieldAndReturnCases.Lung()).Value.MedianTime);
    }

    /// <summary>Source: R, summary(survfit) of survival::aml, Maintained, first and fourth step, interval of the "log" kind.</summary>
    [Fact]
    public void Kaplan_Meier_interval_of_the_log_kind()
    {
        IReadOnlyList<SurvivalStep> steps = KaplanMeier.Of(YieldAndReturnCases.Aml("Maintained")).Value.Steps;
        Printed(0.7541, steps[0].Interval.Lower, 4);
        Assert.Equal(1, steps[0].Interval.Upper);
        Printed(0.3769, steps[3].Interval.Lower, 4);
        Printed(0.999, steps[3].Interval.Upper, 3);
    }

    /// <summary>
    /// Source: the likelihood equations solved with mpmath, 20 digits; NIST e-Handbook 8.4.1.2 prints 1.7208 and 606.5280 for the same data
    /// (from memory; its optimiser stopped one part in a million short).
    /// </summary>
    [Fact]
    public void Weibull_of_the_handbook()
    {
        WeibullFit fit = WeibullFit
            .Of([.. Lifetimes("54 187 216 240 244 335 361 373 375 386"), .. Enumerable.Repeat(new Lifetime(500, false), 10)])
            .Value;
        Near(1.7207972608013570, fit.Shape, 1e-12);
        Near(606.52755800357209, fit.Scale, 1e-12);
        Near(606.5280, fit.Scale, 1e-6);
    }

    /// <summary>Source: R, shapiro.test on its data set cars.</summary>
    [Theory]
    [InlineData("cars", "speed", 0.97765, 0.4576)]
    [InlineData("cars", "dist", 0.95144, 0.0391)]
    public void Shapiro_Wilk(string dataset, string column, double w, double p)
    {
        ShapiroWilkResult result = ShapiroWilk.Test(Dataset.Read(dataset).Column(column)).Value;
        Printed(w, result.W, 5);
        Printed(p, result.P, 4);
    }

    /// <summary>Source: An Introduction to R, chapter 8: the eruptions longer than 3 minutes, W = 0.9793, p = 0.01052.</summary>
    [Fact]
    public void Shapiro_Wilk_of_long_eruptions()
    {
        ShapiroWilkResult result = ShapiroWilk.Test([.. Dataset.Read("faithful").Column("eruptions").Where(t => t > 3)]).Value;
        Printed(0.9793, result.W, 4);
        Printed(0.01052, result.P, 5);
    }

    /// <summary>
    /// Source: closed form. For one failure ending at a time, chi-square with 2 degrees of freedom is exponential: -2 ln(1 - p).
    /// </summary>
    [Fact]
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
