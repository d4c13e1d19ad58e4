using Traceability.Domain.Quality.Capability;
using Traceability.Domain.Quality.Returns;
using Traceability.Domain.Tests.AgainstPublishedValues.Statistics;
using Traceability.Domain.Tests.Sources;
using static Traceability.Domain.Tests.Sources.Nearness;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Statistics;

/// <summary>Survival, normality and the Weibull fit; the data are printed or vendored.</summary>
public class ReturnsAgainstAnotherLibrary
{
    [Fact]
    [From(SourceKind.Library, "R (version not noted), survfit of the remissions, survival::aml and survival::lung, from memory")]
    public void Median_times()
    {
        Assert.Equal(23, KaplanMeier.Of(ReturnsAgainstPublishedExamples.Treated).Value.MedianTime);
        Assert.Equal(8, KaplanMeier.Of(ReturnsAgainstPublishedExamples.Placebo).Value.MedianTime);
        Assert.Equal(31, KaplanMeier.Of(YieldAndReturnCases.Aml("Maintained")).Value.MedianTime);
        Assert.Equal(23, KaplanMeier.Of(YieldAndReturnCases.Aml("Nonmaintained")).Value.MedianTime);
        Assert.Equal(310, KaplanMeier.Of(YieldAndReturnCases.Lung()).Value.MedianTime);
    }

    /// <summary>First and fourth step, interval of the "log" kind.</summary>
    [Fact]
    [From(SourceKind.Library, "R (version not noted), summary(survfit) of survival::aml, Maintained, from memory")]
    public void Kaplan_Meier_interval_of_the_log_kind()
    {
        IReadOnlyList<SurvivalStep> steps = KaplanMeier.Of(YieldAndReturnCases.Aml("Maintained")).Value.Steps;
        Printed(0.7541, steps[0].Interval.Lower, 4);
        Assert.Equal(1, steps[0].Interval.Upper);
        Printed(0.3769, steps[3].Interval.Lower, 4);
        Printed(0.999, steps[3].Interval.Upper, 3);
    }

    [Theory]
    [InlineData("cars", "speed", 0.97765, 0.4576)]
    [InlineData("cars", "dist", 0.95144, 0.0391)]
    [From(SourceKind.Library, "R (version not noted), shapiro.test on its data set cars, from memory")]
    public void Shapiro_Wilk(string dataset, string column, double w, double p)
    {
        ShapiroWilkResult result = ShapiroWilk.Test(Dataset.Read(dataset).Column(column)).Value;
        Printed(w, result.W, 5);
        Printed(p, result.P, 4);
    }

    /// <summary>The data of NIST e-Handbook 8.4.1.2.</summary>
    [Fact]
    [From(SourceKind.Library, "mpmath 1.3, 20 digits, the likelihood equations solved")]
    public void Weibull_of_the_handbooks_data()
    {
        WeibullFit fit = WeibullFit.Of(ReturnsAgainstPublishedExamples.FailedAndCensored).Value;
        Near(1.7207972608013570, fit.Shape, 1e-12);
        Near(606.52755800357209, fit.Scale, 1e-12);
    }
}
