using Traceability.Domain.Quality.Charts;
using Traceability.Domain.Quality.Distributions;
using Traceability.Domain.Tests.Sources;
using static Traceability.Domain.Tests.Sources.Nearness;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Statistics;

/// <summary>
/// The distributions against values computed outside this project from their defining integrals with mpmath 1.3, 20 to 30 digits.
/// </summary>
public class DistributionsAgainstIntegrals
{
    private const string Integrals = "mpmath 1.3, 20 to 30 digits, from the defining integral";

    [Theory]
    [InlineData(-38, 2.8854283600687843e-316)]
    [InlineData(-10, 7.6198530241605261e-24)]
    [InlineData(-5, 2.8665157187919391e-7)]
    [InlineData(-2.5, 0.0062096653257761352)]
    [InlineData(0.3, 0.61791142218895264)]
    [InlineData(4, 0.99996832875816688)]
    [From(SourceKind.Library, Integrals)]
    public void Normal_share_below(double z, double expected) => Near(expected, NormalDistribution.Below(z), 1e-13);

    [Theory]
    [InlineData(-40, -804.60844201375379)]
    [InlineData(-200, -20006.21728089819)]
    [InlineData(3, -0.0013508099647481938)]
    [From(SourceKind.Library, Integrals)]
    public void Normal_log_share_below(double z, double expected) => Near(expected, NormalDistribution.LogBelow(z), 1e-12);

    [Theory]
    [InlineData(1e-10, -6.3613409024040562)]
    [InlineData(0.001, -3.0902323061678135)]
    [InlineData(0.3, -0.52440051270804078)]
    [InlineData(0.975, 1.9599639845400542)]
    [InlineData(0.999999, 4.7534243088228989)]
    [From(SourceKind.Library, Integrals)]
    public void Normal_quantile(double p, double expected) => Near(expected, NormalDistribution.Quantile(p), 1e-10);

    [Theory]
    [InlineData(2.5, 3.0, 0.087706647008065547)]
    [InlineData(12.7, 1.0, 0.050024327689344157)]
    [InlineData(0.1, 40.0, 0.92084385304528016)]
    [InlineData(30.0, 25.0, 3.9958628502550748e-21)]
    [InlineData(4.2, 7.35, 0.0036195352501425694)]
    [From(SourceKind.Library, Integrals)]
    public void Student_two_sided_p(double t, double df, double expected) =>
        Near(expected, StudentDistribution.OutsideBothSides(t, df), 1e-12);

    [Theory]
    [InlineData(0.025, 10.0, 2.2281388519862747)]
    [InlineData(0.4, 3.0, 0.27667066233268991)]
    [InlineData(0.0005, 1.0, 636.61924876871962)]
    [InlineData(0.005, 17.5, 2.8880229797364652)]
    [InlineData(0.49, 30.0, 0.025278783971765792)]
    [From(SourceKind.Library, Integrals)]
    public void Student_upper_quantile(double p, double df, double expected) =>
        Near(expected, StudentDistribution.UpperQuantile(p, df), 1e-11);

    [Theory]
    [InlineData(1e-20, 1.0, 3.1830988618379069e+19)]
    [InlineData(1e-100, 1.0, 3.1830988618379067e+99)]
    [InlineData(1e-300, 1.0, 3.1830988618379066e+299)]
    [InlineData(1e-100, 2.0, 7.0710678118654752e+49)]
    [InlineData(1e-300, 5.0, 1.5683925590993378e+60)]
    [InlineData(1e-50, 30.0, 232.84591679865064)]
    [InlineData(1e-300, 100.0, 9682.7342870695636)]
    [InlineData(1e-10, 0.5, 1.0284911563163399e+19)]
    [InlineData(1e-15, 1000.0, 8.0702818322985243)]
    [From(SourceKind.Library, Integrals)]
    public void Student_upper_quantile_far_out(double p, double df, double expected) =>
        Near(expected, StudentDistribution.UpperQuantile(p, df), 1e-10);

    [Theory]
    [InlineData(3.84, 1.0, 0.050043521248705099)]
    [InlineData(0.5, 4.0, 0.97350097883925609)]
    [InlineData(90.0, 10.0, 5.35592612458162e-15)]
    [InlineData(1200.0, 1000.0, 1.2255942330622904e-5)]
    [InlineData(700.0, 3.0, 2.0991308534204088e-151)]
    [From(SourceKind.Library, Integrals)]
    public void Chi_square_share_above(double x, double df, double expected) => Near(expected, ChiSquareDistribution.Above(x, df), 1e-11);

    [Theory]
    [InlineData(0.95, 1.0, 3.841458820694126)]
    [InlineData(0.05, 10.0, 3.94029913611906)]
    [InlineData(0.001, 49.0, 23.982824727297884)]
    [InlineData(0.999, 2.0, 13.815510557964274)]
    [From(SourceKind.Library, Integrals)]
    public void Chi_square_quantile(double p, double df, double expected) => Near(expected, ChiSquareDistribution.Quantile(p, df), 1e-11);

    [Theory]
    [InlineData(1e-10, 1.0, 1.5707963267948967e-20)]
    [InlineData(1e-100, 1.0, 1.5707963267948967e-200)]
    [InlineData(1e-20, 2.0, 1.9999999999999999e-20)]
    [InlineData(1e-100, 10.0, 5.2103421693947038e-20)]
    [InlineData(1e-10, 1000.0, 741.26807171935294)]
    [InlineData(1e-15, 100_000.0, 96489.787816611206)]
    [InlineData(1 - 8.8817841970012523e-16, 1.0, 64.664113302157873)]
    [InlineData(1 - 8.8817841970012523e-16, 10.0, 93.927534869841542)]
    [InlineData(1 - 9.0949470177292824e-13, 1000.0, 1348.3395716165231)]
    [From(SourceKind.Library, Integrals)]
    public void Chi_square_quantile_far_out(double p, double df, double expected) =>
        Near(expected, ChiSquareDistribution.Quantile(p, df), 1e-10);

    [Theory]
    [InlineData(262.5, 1.0, 3.29, 0.010000220600757977)]
    [InlineData(10_000.0, 1.0, 3.29, 0.00026251456173937244)]
    [InlineData(30.0, 2.0, 4.03, 0.01893376876748807)]
    [InlineData(1_000.0, 2.0, 8.0, 6.4997758554412125e-5)]
    [InlineData(1_000_000.0, 2.0, 5.0, 2.5999999980267705e-11)]
    [From(SourceKind.Library, Integrals)]
    public void Noncentral_t_share_above_far_out(double t, double df, double noncentrality, double expected)
    {
        Near(expected, NoncentralStudentDistribution.Above(t, df, noncentrality), 1e-10);
        Near(1 - expected, NoncentralStudentDistribution.Below(t, df, noncentrality), 1e-12);
    }

    [Theory]
    [InlineData(4.96, 1.0, 10.0, 0.05008765056646819)]
    [InlineData(0.2, 5.0, 8.0, 0.95354705414147572)]
    [InlineData(245.6, 9.0, 60.0, 6.8487586405025645e-44)]
    [InlineData(3.1, 2.0, 17.128, 0.070951375684543321)]
    [InlineData(50.0, 3.0, 3.0, 0.0046336401900344801)]
    [From(SourceKind.Library, Integrals)]
    public void F_share_above(double f, double df1, double df2, double expected) => Near(expected, FDistribution.Above(f, df1, df2), 1e-11);

    [Theory]
    [InlineData(0.05, 1.0, 10.0, 4.9646027437307144)]
    [InlineData(0.01, 3.0, 12.0, 5.9525446815458687)]
    [InlineData(0.9, 6.0, 4.0, 0.31438998832176845)]
    [From(SourceKind.Library, Integrals)]
    public void F_upper_quantile(double p, double df1, double df2, double expected) =>
        Near(expected, FDistribution.UpperQuantile(p, df1, df2), 1e-11);

    [Theory]
    [InlineData(3.0, 48.0, 0.025, 0.012548587835334062)]
    [InlineData(0.5, 7.0, 0.01, 1.1628118498380525e-5)]
    [InlineData(20.0, 20.0, 0.5, 0.5)]
    [InlineData(1.0, 30.0, 0.975, 0.11570330822202781)]
    [From(SourceKind.Library, Integrals)]
    public void Beta_quantile(double a, double b, double p, double expected) => Near(expected, BetaDistribution.Quantile(a, b, p), 1e-11);

    [Theory]
    [InlineData(1.0, 3.0, 0.5, 0.651528333010128)]
    [InlineData(10.0, 5.0, 6.0, 0.862537351153701)]
    [InlineData(-1.0, 8.0, 1.0, 0.0278102843968754)]
    [InlineData(12.0, 42.0, 8.4, 0.985428893340616)]
    [InlineData(45.0, 9.0, 38.0, 0.696766842552898)]
    [From(SourceKind.Library, Integrals)]
    public void Noncentral_t_share_below(double t, double df, double noncentrality, double expected) =>
        Near(expected, NoncentralStudentDistribution.Below(t, df, noncentrality), 1e-11);

    [Theory]
    [InlineData(11, 3.17287270382)]
    [InlineData(13, 3.3359803541)]
    [InlineData(50, 4.49814725878)]
    [From(SourceKind.Library, Integrals)]
    public void Mean_range(int n, double expected) => Near(expected, ControlChartConstants.For(n).MeanRange, 1e-11);
}
