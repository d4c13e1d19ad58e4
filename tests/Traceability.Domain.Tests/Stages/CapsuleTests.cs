using CsCheck;
using Traceability.Domain.Stages.Capsule;

namespace Traceability.Domain.Tests.Stages;

public class CapsuleTests
{
    private static readonly Gen<PolarisedSide> BelowCollapse =
        from radius in Gen.Double[0.006, 0.018]
        from gap in Gen.Double[15e-6, 70e-6]
        from tension in Gen.Double[10, 300]
        from share in Gen.Double[0.02, 0.98]
        select new PolarisedSide(share * PullIn.VoltageV(radius, gap, tension), radius, gap, tension);

    [Fact]
    public void Gap_and_capacitance_are_each_others_inverse() =>
        Gen.Select(Gen.Double[0.005, 0.02], Gen.Double[10e-6, 100e-6], Gen.Double[0, 20e-12])
            .Sample(
                (radius, gap, stray) =>
                {
                    var read = CapsuleCapacitance.OfFlatFilmF(radius, gap) + stray;
                    Assert.Equal(1, CapsuleCapacitance.GapM(read, stray, Math.PI * radius * radius) / gap, 1e-9);
                }
            );

    [Fact]
    public void A_sunk_film_has_the_capacitance_of_its_rings_added_up()
    {
        const double a = 0.0125,
            d = 40e-6,
            w0 = 8e-6;
        const int rings = 20_000;
        var sum = 0.0;
        for (var i = 0; i < rings; i++)
        {
            var r = (i + 0.5) * a / rings;
            sum += 8.8541878128e-12 * 2 * Math.PI * r * (a / rings) / (d - w0 * (1 - r * r / (a * a)));
        }
        Assert.Equal(1, CapsuleCapacitance.OfDeflectedFilmF(a, d, w0) / sum, 1e-6);
        Assert.Equal(CapsuleCapacitance.OfFlatFilmF(a, d), CapsuleCapacitance.OfDeflectedFilmF(a, d, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => CapsuleCapacitance.OfDeflectedFilmF(a, d, d));
    }

    /// <summary>Finite differences on a fine grid, relaxed by Newton steps: another method than the one under test.</summary>
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.4)]
    [InlineData(0.7)]
    public void The_resting_shape_is_that_of_a_finite_difference_solution(double pull)
    {
        const int n = 4000;
        const double h = 1.0 / n;
        var u = new double[n + 1];
        for (var iteration = 0; iteration < 30; iteration++)
        {
            double[] low = new double[n],
                main = new double[n],
                up = new double[n],
                residual = new double[n];
            for (var i = 0; i < n; i++)
            {
                var force = pull / Math.Pow(1 - u[i], 2);
                var slope = 2 * pull / Math.Pow(1 - u[i], 3);
                var x = i * h;
                (low[i], up[i]) = i == 0 ? (0, 4 / (h * h)) : (1 / (h * h) - 1 / (2 * h * x), 1 / (h * h) + 1 / (2 * h * x));
                main[i] = (i == 0 ? -4 : -2) / (h * h) + slope;
                residual[i] = -((i == 0 ? 0 : low[i] * u[i - 1]) + (main[i] - slope) * u[i] + up[i] * u[i + 1] + force);
            }
            for (var i = 1; i < n; i++)
            {
                var factor = low[i] / main[i - 1];
                main[i] -= factor * up[i - 1];
                residual[i] -= factor * residual[i - 1];
            }
            var step = 0.0;
            for (var i = n - 1; i >= 0; i--)
            {
                step = (residual[i] - up[i] * (i == n - 1 ? 0 : step)) / main[i];
                u[i] += step;
            }
        }
        Assert.Equal(u[0], ElectrostaticPull.DeflectionM(SideWith(pull))!.Value / 40e-6, 1e-5);
    }

    [Fact]
    public void The_exact_deflection_lies_above_the_first_order_one_and_below_that_of_collapse() =>
        BelowCollapse.Sample(side =>
        {
            var exact = ElectrostaticPull.DeflectionM(side)!.Value;
            Assert.InRange(exact, ElectrostaticPull.FirstOrderDeflectionM(side), PullIn.MembraneCentreShare * side.GapM);
        });

    [Fact]
    public void More_voltage_pulls_farther_and_lowers_the_resonance() =>
        BelowCollapse.Sample(
            side =>
            {
                var more = side with { VoltageV = side.VoltageV * 1.01 };
                Assert.True(ElectrostaticPull.DeflectionM(more) > ElectrostaticPull.DeflectionM(side));
                Assert.True(SpringSoftening.ExactRatio(more) < SpringSoftening.ExactRatio(side));
                Assert.True(SpringSoftening.ExactRatio(side) <= SpringSoftening.FlatRatio(side));
            },
            iter: 60
        );

    [Fact]
    public void Weak_and_strong_pulls_meet_where_the_method_changes()
    {
        double Share(double pull) => ElectrostaticPull.DeflectionM(SideWith(pull))!.Value;
        Assert.Equal(1, Share(1.0001e-4) / 1.0001e-4 / (Share(0.9999e-4) / 0.9999e-4), 1e-6);
        Assert.Equal(SpringSoftening.ExactRatio(SideWith(0.9999e-4))!.Value, SpringSoftening.ExactRatio(SideWith(1.0001e-4))!.Value, 1e-7);
    }

    [Fact]
    public void At_collapse_the_resonance_has_gone_and_beyond_it_there_is_no_answer()
    {
        Assert.InRange(SpringSoftening.ExactRatio(SideWith(PullIn.MembraneParameter * (1 - 1e-8)))!.Value, 0, 0.03);
        Assert.Null(SpringSoftening.ExactRatio(SideWith(0.80)));
        Assert.Null(ElectrostaticPull.DeflectionM(SideWith(0.80)));
        Assert.True(PullIn.ShareInUse(SideWith(0.80)) > 1);
    }

    [Fact]
    public void The_least_tension_puts_the_voltage_at_its_share() =>
        Gen.Select(Gen.Double[10, 100], Gen.Double[0.006, 0.018], Gen.Double[20e-6, 60e-6], Gen.Double[0.3, 1])
            .Sample(
                (voltage, radius, gap, share) =>
                {
                    var tension = PullIn.LeastTensionNPerM(voltage, radius, gap, share);
                    Assert.Equal(share, PullIn.ShareInUse(new(voltage, radius, gap, tension)), 1e-9);
                }
            );

    [Fact]
    public void The_parabola_estimate_is_a_few_percent_too_high() =>
        Assert.Equal(1.024, Math.Sqrt(PullIn.ParabolaParameter / PullIn.MembraneParameter), 0.001);

    [Fact]
    public void Equal_sides_have_no_asymmetry_and_swapped_sides_the_opposite_one()
    {
        Assert.Equal(0, CapsuleCapacitance.Asymmetry(60e-12, 60e-12));
        Assert.Equal(-CapsuleCapacitance.Asymmetry(60e-12, 65e-12), CapsuleCapacitance.Asymmetry(65e-12, 60e-12), 1e-15);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(-1.0)]
    [InlineData(double.NaN)]
    public void Nonsense_is_refused(double nonsense)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => PullIn.VoltageV(nonsense, 40e-6, 60));
        Assert.Throws<ArgumentOutOfRangeException>(() => PullIn.ShareInUse(new(60, 0.0125, nonsense, 60)));
        Assert.Throws<ArgumentOutOfRangeException>(() => LowCorner.CornerHz(nonsense, 60e-12));
        Assert.Throws<ArgumentOutOfRangeException>(() => Leakage.CapsuleVoltageV(60, 1e9, nonsense));
        Assert.Throws<ArgumentOutOfRangeException>(() => CapsuleCapacitance.GapM(60e-12, 0, nonsense));
        Assert.Throws<ArgumentOutOfRangeException>(() => CapsuleCapacitance.GapM(3e-12, 3e-12, 4e-4));
    }

    private static PolarisedSide SideWith(double pull)
    {
        const double radius = 0.0125,
            gap = 40e-6,
            tension = 60;
        return new(Math.Sqrt(2 * pull * tension * Math.Pow(gap, 3) / (8.8541878128e-12 * radius * radius)), radius, gap, tension);
    }
}
