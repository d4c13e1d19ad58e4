using CsCheck;
using Traceability.Domain.Stages.ClimateSoak;

namespace Traceability.Domain.Tests.Stages;

public class MoistAirTests
{
    [Fact]
    public void Air_at_its_dew_point_is_saturated() =>
        Gen.Select(Gen.Double[-30, 55], Gen.Double[2, 100])
            .Sample((t, rh) => Assert.Equal(100, MoistAir.HumidityAtPct(t, rh, DewPoint.MagnusC(t, rh)), 1e-6));

    [Fact]
    public void Every_formula_inverts_to_its_own_dew_point() =>
        Gen.Select(Gen.Enum<VapourFormula>(), Gen.Double[10, 60], Gen.Double[60, 100])
            .Sample(
                (formula, t, rh) =>
                {
                    var dew = DewPoint.InvertedC(formula, t, rh)!.Value;
                    Assert.Equal(
                        rh / 100,
                        SaturationVapourPressure.OverWaterHpa(formula, dew) / SaturationVapourPressure.OverWaterHpa(formula, t),
                        1e-8
                    );
                }
            );

    [Fact]
    public void A_dew_point_below_the_range_of_the_formula_is_not_invented()
    {
        Assert.Null(DewPoint.InvertedC(VapourFormula.IapwsIf97, 20, 10));
        Assert.NotNull(DewPoint.InvertedC(VapourFormula.Sonntag, 20, 10));
    }

    [Fact]
    public void A_part_at_the_dew_point_is_wet_and_a_warmer_one_dry()
    {
        var dew = DewPoint.MagnusC(23, 50);
        Assert.True(DewPoint.Condenses(23, 50, dew));
        Assert.False(DewPoint.Condenses(23, 50, dew + 0.01));
    }

    [Fact]
    public void Equal_bulbs_read_saturation_and_a_colder_wet_one_less() =>
        Gen.Select(Gen.Double[5, 50], Gen.Double[0.1, 3])
            .Sample(
                (t, depression) =>
                {
                    Assert.Equal(100, MoistAir.HumidityFromPsychrometerPct(t, t, 1000), 1e-9);
                    Assert.True(MoistAir.HumidityFromPsychrometerPct(t, t - depression, 1000) < 100);
                }
            );

    [Theory]
    [InlineData(0.0)]
    [InlineData(-5.0)]
    [InlineData(double.NaN)]
    public void Air_without_water_has_no_dew_point(double humidity) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => DewPoint.MagnusC(23, humidity));

    [Fact]
    public void Temperatures_outside_a_formula_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SaturationVapourPressure.IapwsIf97Hpa(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => SaturationVapourPressure.MagnusOverWaterHpa(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => MoistAir.HumidityFromPsychrometerPct(20, 21, 1000));
        Assert.Throws<ArgumentOutOfRangeException>(() => MoistAir.MixingRatioGPerKg(90, 100, 500));
    }
}
