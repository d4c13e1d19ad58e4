using CsCheck;
using Traceability.Domain.Stages.Diaphragm;

namespace Traceability.Domain.Tests.Stages;

public class DiaphragmTests
{
    private static readonly Gen<(double F1, double A1, double A2, double Sigma, double Rho, double Gamma)> Jigs = Gen.Select(
        Gen.Double[300, 3000],
        Gen.Double[0.008, 0.02],
        Gen.Double[0.006, 0.018],
        Gen.Double[0.003, 0.02],
        Gen.Double[0.9, 1.3],
        Gen.Double[0.7, 1.5]
    );

    [Fact]
    public void The_ring_expectation_has_the_tension_of_the_jig() =>
        Jigs.Sample(jig =>
        {
            var ring = RingExpectation.InSameMountingHz(jig.F1, jig.A1, jig.A2, jig.Sigma, jig.Rho, jig.Gamma);
            Assert.Equal(
                1,
                MembraneTension.FromResonanceInAir(ring, jig.A2, jig.Sigma, jig.Rho, jig.Gamma)
                    / MembraneTension.FromResonanceInAir(jig.F1, jig.A1, jig.Sigma, jig.Rho, jig.Gamma),
                1e-9
            );
        });

    [Fact]
    public void The_exponent_of_the_radius_lies_between_that_of_vacuum_and_that_of_air_alone() =>
        Jigs.Where(j => j.A1 > 1.05 * j.A2)
            .Sample(jig =>
            {
                var ratio = RingExpectation.InSameMountingHz(jig.F1, jig.A1, jig.A2, jig.Sigma, jig.Rho, jig.Gamma) / jig.F1;
                Assert.InRange(Math.Log(ratio) / Math.Log(jig.A1 / jig.A2), 1, 1.5);
            });

    [Fact]
    public void Another_fixture_on_the_ring_changes_the_expectation() =>
        Assert.NotEqual(
            RingExpectation.ResonanceHz(new(900, 0.0165, 1.2), 1.2, 0.0125, 1.2, 1.2, 0.009),
            RingExpectation.ResonanceHz(new(900, 0.0165, 1.2), 1.2, 0.0125, 1.2, 1.0, 0.009)
        );

    [Fact]
    public void A_film_that_gave_way_has_negative_drift() => Assert.Equal(-0.05, RingExpectation.RelativeDrift(950, 1000), 1e-12);

    [Fact]
    public void Slack_film_has_no_resonance()
    {
        Assert.Null(TensionShift.RelativeResonanceChange(30, -30));
        Assert.Null(TensionShift.RelativeResonanceChange(30, -31));
        Assert.Equal(0, TensionShift.RelativeResonanceChange(30, 0));
    }

    [Fact]
    public void A_warmer_brass_ring_tightens_and_moisture_slackens_the_film()
    {
        FilmStiffness film = new(4.5e9, 0.38, 6e-6);
        Assert.True(TensionShift.ByTemperatureNPerM(film, 10, 19e-6, 17e-6) > 0);
        Assert.True(TensionShift.ByHumidityNPerM(film, 10, 6e-6) < 0);
    }

    [Fact]
    public void The_mean_of_the_static_shape_is_its_integral()
    {
        const int rings = 2000;
        var volume = Enumerable
            .Range(0, rings)
            .Sum(i =>
            {
                var x = (i + 0.5) / rings;
                return 2 * x / rings * (1 - x * x) * StaticResponse.CentreM(1, 0.0125, 60);
            });
        Assert.Equal(1, volume / StaticResponse.MeanM(1, 0.0125, 60), 1e-6);
        Assert.Equal(
            1,
            StaticResponse.MeanM(1, 0.0125, 60) * Math.PI * 0.0125 * 0.0125 / StaticResponse.AcousticComplianceM5PerN(0.0125, 60),
            1e-12
        );
    }

    [Fact]
    public void A_pressure_in_hectopascal_is_caught_as_a_mistake() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => AirDensity.KgPerM3(20, 1013.25, 50));

    [Fact]
    public void Warm_wet_and_thin_air_is_lighter() =>
        Gen.Select(Gen.Double[0, 40], Gen.Double[85_000, 105_000], Gen.Double[10, 90])
            .Sample(
                (t, p, rh) =>
                {
                    Assert.True(AirDensity.KgPerM3(t + 1, p, rh) < AirDensity.KgPerM3(t, p, rh));
                    Assert.True(AirDensity.KgPerM3(t, p, rh + 1) < AirDensity.KgPerM3(t, p, rh));
                    Assert.True(AirDensity.KgPerM3(t, p - 100, rh) < AirDensity.KgPerM3(t, p, rh));
                }
            );

    [Fact]
    public void The_stress_warning_counts_from_the_yield_stress() => Assert.Equal(0.5, MembraneTension.ShareOfYield(50e6, 100e6));
}
