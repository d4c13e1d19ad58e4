using Traceability.Domain.Quality.Charts;
using Traceability.Domain.Quality.GaugeStudy;
using Traceability.Domain.Quality.Outliers;
using Traceability.Domain.Tests.Sources;
using static Traceability.Domain.Tests.Sources.Nearness;

namespace Traceability.Domain.Tests.AgainstPublishedValues.Statistics;

/// <summary>Constants of charts, gauge studies, outlier tests and tolerance intervals against printed tables.</summary>
public class ChartsAndLimitsAgainstPublishedTables
{
    [Theory]
    [InlineData(11, 3.173, 0.787, 0.9754, 0.285, 0.927, 0.256, 1.744, 0.321, 1.679)]
    [InlineData(12, 3.258, 0.778, 0.9776, 0.266, 0.886, 0.283, 1.717, 0.354, 1.646)]
    [InlineData(13, 3.336, 0.770, 0.9794, 0.249, 0.850, 0.307, 1.693, 0.382, 1.618)]
    [InlineData(14, 3.407, 0.763, 0.9810, 0.235, 0.817, 0.328, 1.672, 0.406, 1.594)]
    [InlineData(16, 3.532, 0.750, 0.9835, 0.212, 0.763, 0.363, 1.637, 0.448, 1.552)]
    [InlineData(18, 3.640, 0.739, 0.9854, 0.194, 0.718, 0.391, 1.609, 0.482, 1.518)]
    [From(SourceKind.Printed, "Montgomery, Introduction to Statistical Quality Control, appendix of control-chart factors, from memory")]
    public void Control_chart_factors(
        int n,
        double d2,
        double d3,
        double c4,
        double a2,
        double a3,
        double dLower,
        double dUpper,
        double bLower,
        double bUpper
    )
    {
        ControlChartConstants constants = ControlChartConstants.For(n);
        Printed(d2, constants.MeanRange, 3);
        Printed(c4, constants.MeanDeviation, 4);
        Printed(a2, constants.MeansByRange, 3);
        Printed(a3, constants.MeansByDeviation, 3);
        Printed(bLower, constants.DeviationLower, 3);
        Printed(bUpper, constants.DeviationUpper, 3);
        // The printed d3 and what follows from it were rounded on the way: one unit in the last place.
        Assert.InRange(constants.RangeDeviation, d3 - 0.001, d3 + 0.001);
        Assert.InRange(constants.RangeLower, dLower - 0.001, dLower + 0.001);
        Assert.InRange(constants.RangeUpper, dUpper - 0.001, dUpper + 0.001);
    }

    [Theory]
    [InlineData(2, 0.8862, 0.7071)]
    [InlineData(3, 0.5908, 0.5231)]
    [InlineData(4, 0.4857, 0.4467)]
    [InlineData(5, 0.4299, 0.4030)]
    [InlineData(6, 0.3946, 0.3742)]
    [InlineData(7, 0.3698, 0.3534)]
    [InlineData(8, 0.3512, 0.3375)]
    [InlineData(9, 0.3367, 0.3249)]
    [InlineData(10, 0.3249, 0.3146)]
    [From(SourceKind.Printed, "Measurement systems analysis manual, K1 by trials and K3 by parts, from memory")]
    public void Average_and_range_factors(int size, double forManyRanges, double forOneRange)
    {
        AverageRangeFactors factors = AverageRangeFactors.For(size, size, size);
        Printed(forManyRanges, factors.K1, 4);
        Printed(forOneRange, factors.K2, 4);
        Printed(forOneRange, factors.K3, 4);
    }

    [Theory]
    [InlineData(3, 1.153)]
    [InlineData(4, 1.463)]
    [InlineData(6, 1.822)]
    [InlineData(7, 1.938)]
    [InlineData(9, 2.110)]
    [InlineData(10, 2.176)]
    [InlineData(15, 2.409)]
    [InlineData(20, 2.557)]
    [From(SourceKind.Printed, "Grubbs' table, one-sided, 5 %, from memory")]
    public void Grubbs_critical_values(int n, double critical) => Printed(critical, Grubbs.Critical(n, 0.05), 3);

    [Theory]
    [InlineData(2, 26.260)]
    [InlineData(3, 7.656)]
    [InlineData(4, 5.144)]
    [InlineData(5, 4.203)]
    [InlineData(6, 3.708)]
    [InlineData(8, 3.187)]
    [InlineData(10, 2.911)]
    [InlineData(20, 2.396)]
    [InlineData(30, 2.220)]
    [InlineData(50, 2.065)]
    [From(SourceKind.Printed, "Tables of one-sided normal tolerance factors, 95 % of the process with 95 % confidence, from memory")]
    public void One_sided_tolerance_factors(int n, double factor) => Printed(factor, ToleranceFactors.OneSided(n, 0.95, 0.95), 3);

    /// <summary>R's package <c>tolerance</c>, method "EXACT", gives the same.</summary>
    [Theory]
    [InlineData(10, 3.393)]
    [From(SourceKind.Printed, "Tables of exact two-sided normal tolerance factors, 95 % with 95 % confidence, from memory")]
    public void Two_sided_tolerance_factors_can_be_had_exact(int n, double factor) =>
        Printed(factor, ToleranceFactors.TwoSidedExact(n, 0.95, 0.95), 3);
}
