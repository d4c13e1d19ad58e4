using CsCheck;
using Traceability.Domain.Stages.AcousticTest.Noise;
using Traceability.Domain.Stages.AcousticTest.Sensitivities;

namespace Traceability.Domain.Tests.Stages.AcousticTest.Sensitivities;

public class SensitivityTests
{
    [Fact]
    public void Level_and_sensitivity_are_each_others_inverse() =>
        Gen.Double[0.01, 1000].Sample(s => Assert.Equal(1, Sensitivity.MillivoltPerPascal(Sensitivity.LevelDbRe1VPerPa(s)) / s, 1e-9));

    [Fact]
    public void Twice_the_voltage_of_the_reference_is_six_decibels_more() =>
        Assert.Equal(-19.9794, ComparisonCalibration.LevelDb(-26, 0.01, 0.02), 1e-4);

    [Fact]
    public void Corrections_are_added_with_their_sign() =>
        Assert.Equal(
            ComparisonCalibration.LevelDb(-26, 0.01, 0.01) - 0.2,
            ComparisonCalibration.LevelDb(-26, 0.01, 0.01, 0.1, -0.3),
            1e-12
        );

    [Fact]
    public void Contributions_may_come_in_any_order() =>
        Assert.Equal(
            ComparisonCalibration.CombinedUncertainty(0.3, 0.1, 0.2),
            ComparisonCalibration.CombinedUncertainty(0.2, 0.3, 0.1),
            1e-15
        );

    [Fact]
    public void A_silent_output_has_no_level() => Assert.Throws<ArgumentOutOfRangeException>(() => EquivalentNoise.LevelDb(0, 0.02));

    [Fact]
    public void A_station_as_loud_as_the_microphone_leaves_an_upper_bound()
    {
        Assert.Equal(new BackgroundNoise(12, true), BackgroundNoise.Subtract(12, 9.5));
        Assert.Equal(new BackgroundNoise(12, true), BackgroundNoise.Subtract(12, 14));
        Assert.False(BackgroundNoise.Subtract(12, 9).IsAtMost);
    }

    [Fact]
    public void Ambient_correction_vanishes_in_the_reference_air() => Assert.Equal(0, AmbientCorrection.PressureLevelDb(Ambient.Reference));
}
