using CsCheck;
using Traceability.Domain.Stages.Diaphragm;

namespace Traceability.Domain.Tests.Stages;

public class AirLoadTests
{
    [Fact]
    public void The_stored_coefficients_are_those_of_the_integrals()
    {
        Assert.Equal(AirLoad.BaffledOneSide, AirLoadIntegrals.BaffledOneSide(ModeShape.MembraneFundamental), 1e-10);
        Assert.Equal(AirLoad.Unbaffled, AirLoadIntegrals.UnbaffledBothSides(ModeShape.MembraneFundamental), 1e-10);
        Assert.Equal(2 * AirLoad.BaffledOneSide, AirLoad.BaffledBothSides);
    }

    [Fact]
    public void A_fixture_is_calibrated_by_two_radii()
    {
        const double sigma = 0.009305,
            gamma = 1.21,
            tension = 55;
        AirLoadReading Read(double radius, double rho) =>
            new(MembraneModes.FundamentalInAirHz(radius, tension, sigma, rho, gamma), radius, rho);
        Assert.Equal(gamma, AirLoad.Calibrate(Read(0.0125, 1.2), Read(0.0165, 1.2), sigma), 1e-9);
        Assert.Equal(gamma, AirLoad.Calibrate(Read(0.0125, 1.2), Read(0.0125, 1.0), sigma), 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => AirLoad.Calibrate(Read(0.0125, 1.2), Read(0.0125, 1.2), sigma));
    }

    [Fact]
    public void The_ten_modes_lie_below_the_single_one_and_hardly_differ() =>
        Gen.Select(Gen.Enum<BaffleCondition>(), Gen.Double[0.1, 5])
            .Sample(
                (surroundings, mu) =>
                {
                    var single = AirLoad.FrequencyRatio(AirLoad.Coefficient(surroundings), mu);
                    var several = AirLoadGalerkin.FrequencyRatio(surroundings, mu, modes: 4);
                    Assert.InRange(several, single * 0.99, single);
                },
                iter: 20
            );

    [Fact]
    public void Tension_and_resonance_are_each_others_inverse() =>
        Gen.Select(Gen.Double[1, 3000], Gen.Double[0.004, 0.03], Gen.Double[0.002, 0.03], Gen.Double[0, 2], Gen.Double[0, 1.5])
            .Sample(
                (tension, radius, sigma, rho, gamma) =>
                {
                    var hertz = MembraneModes.FundamentalInAirHz(radius, tension, sigma, rho, gamma);
                    Assert.Equal(1, MembraneTension.FromResonanceInAir(hertz, radius, sigma, rho, gamma) / tension, 1e-9);
                }
            );

    [Fact]
    public void More_air_means_more_tension_for_the_same_resonance() =>
        Gen.Select(Gen.Double[200, 5000], Gen.Double[0.5, 2], Gen.Double[0.01, 1])
            .Sample(
                (hertz, gamma, more) =>
                {
                    double Tension(double coefficient) => MembraneTension.FromResonanceInAir(hertz, 0.0125, 0.009, 1.2, coefficient);
                    Assert.True(Tension(gamma + more) > Tension(gamma));
                }
            );

    [Theory]
    [InlineData(0.0)]
    [InlineData(-1.0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Nonsense_is_refused(double nonsense)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => MembraneTension.FromResonanceInAir(nonsense, 0.0125, 0.009, 1.2, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => MembraneTension.FromResonanceInAir(900, nonsense, 0.009, 1.2, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => MembraneTension.FromResonanceInAir(900, 0.0125, nonsense, 1.2, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => MembraneTension.StressPa(30, nonsense));
        Assert.Throws<ArgumentOutOfRangeException>(() => MembraneModes.FundamentalHz(0.0125, nonsense, 0.009));
    }
}
