using CsCheck;
using Traceability.Domain.Stages.Diaphragm;

namespace Traceability.Domain.Tests.Stages;

public class TensionUncertaintyTests
{
    [Fact]
    public void The_sensitivities_are_the_slopes_of_the_formula() =>
        Gen.Select(Gen.Double[500, 3000], Gen.Double[0.006, 0.018], Gen.Double[0.003, 0.02], Gen.Double[0.9, 1.3], Gen.Double[0.7, 1.5])
            .Sample(
                (f, a, sigma, rho, gamma) =>
                {
                    var share = TensionUncertainty.AirShareOfMass(gamma, AirLoad.MassRatio(rho, a, sigma));
                    const double e = 1e-5;
                    double Slope(double df, double da, double ds, double dg, double dr) =>
                        Math.Abs(
                            Math.Log(
                                MembraneTension.FromResonanceInAir(
                                    f * (1 + df),
                                    a * (1 + da),
                                    sigma * (1 + ds),
                                    rho * (1 + dr),
                                    gamma * (1 + dg)
                                )
                                    / MembraneTension.FromResonanceInAir(
                                        f * (1 - df),
                                        a * (1 - da),
                                        sigma * (1 - ds),
                                        rho * (1 - dr),
                                        gamma * (1 - dg)
                                    )
                            )
                        ) / (2 * e);
                    Assert.Equal(Slope(e, 0, 0, 0, 0), TensionUncertainty.OfTensionInAir(share, new(1, 0, 0, 0, 0)), 1e-6);
                    Assert.Equal(Slope(0, e, 0, 0, 0), TensionUncertainty.OfTensionInAir(share, new(0, 1, 0, 0, 0)), 1e-6);
                    Assert.Equal(Slope(0, 0, e, 0, 0), TensionUncertainty.OfTensionInAir(share, new(0, 0, 1, 0, 0)), 1e-6);
                    Assert.Equal(Slope(0, 0, 0, e, 0), TensionUncertainty.OfTensionInAir(share, new(0, 0, 0, 1, 0)), 1e-6);
                    Assert.Equal(Slope(0, 0, 0, 0, e), TensionUncertainty.OfTensionInAir(share, new(0, 0, 0, 0, 1)), 1e-6);
                }
            );

    [Fact]
    public void A_negative_uncertainty_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => TensionUncertainty.OfTensionInVacuo(-0.01, 0.01, 0.01));
}
