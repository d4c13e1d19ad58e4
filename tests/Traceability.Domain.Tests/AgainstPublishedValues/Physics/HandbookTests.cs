using Traceability.Domain.Stages.AcousticTest.Noise;
using Traceability.Domain.Stages.AcousticTest.Sensitivities;
using Traceability.Domain.Stages.BoardSet;
using Traceability.Domain.Stages.Capsule;
using Traceability.Domain.Stages.Diaphragm;
using Traceability.Domain.Stages.FilmLot;
using Traceability.Domain.Values.Limits;

namespace Traceability.Domain.Tests.AgainstPublishedValues.Physics;

/// <summary>Single printed values, each with its source.</summary>
public class HandbookTests
{
    /// <summary>Source: Pelesko and Bernstein, Modeling MEMS and NEMS: 0.789 for the unit disc, from memory.</summary>
    [Fact]
    public void Pull_in_of_the_disc_rounds_to_the_textbook() => Assert.Equal(0.789, Math.Round(PullIn.MembraneParameter, 3), 1e-9);

    /// <summary>Source: Senturia, Microsystem Design, chapter 6: plate on a spring, V^2 = 8 k d^3 / (27 eps0 A), from memory.</summary>
    [Fact]
    public void The_lumped_coefficient_is_that_of_the_plate_on_a_spring()
    {
        const double a = 0.01,
            d = 30e-6,
            tension = 50;
        var stiffness = 8 * Math.PI * tension;
        var textbook = Math.Sqrt(8 * stiffness * Math.Pow(d, 3) / (27 * 8.8541878128e-12 * Math.PI * a * a));
        Assert.Equal(textbook, PullIn.VoltageV(PullIn.MeanStiffnessCoefficient, a, d, tension), 1e-9);
    }

    /// <summary>Source: ICAO standard atmosphere (ISO 2533), sea level: 1.2250 kg/m3 and 340.294 m/s at 15 °C, dry.</summary>
    [Fact]
    public void Dry_air_at_fifteen_degrees_is_the_standard_atmosphere()
    {
        Assert.Equal(1.2250, AirDensity.KgPerM3(15, 101_325, 0), 0.0002);
        Assert.Equal(340.294, SpeedOfSound.InDryAirMPerS(15), 0.05);
    }

    /// <summary>
    /// Source: CRC Handbook of Chemistry and Physics, dry air at 0 °C and 1 atm: 1.293 kg/m3, from memory; the ideal gas is good to 0.1
    /// %.
    /// </summary>
    [Fact]
    public void Dry_air_at_zero_degrees_is_that_of_the_handbook() => Assert.Equal(1, AirDensity.KgPerM3(0, 101_325, 0) / 1.293, 1e-3);

    /// <summary>
    /// Source: CIPM-81/91 equation, 20 °C, 101 325 Pa, 50 %: 1.1992 kg/m3, from memory; the ideal mixture reads 0.05 % lower.
    /// </summary>
    [Fact]
    public void Moist_air_agrees_with_the_metrologists_equation() => Assert.Equal(1.1992, AirDensity.KgPerM3(20, 101_325, 50), 0.0012);

    /// <summary>Source: Cramer, J. Acoust. Soc. Am. 93 (1993) 2510, dry air at 0 °C: 331.46 m/s, from memory.</summary>
    [Fact]
    public void Cramers_formula_gives_his_own_value_for_dry_air() =>
        Assert.Equal(331.46, SpeedOfSound.InMoistAirMPerS(0, 101_325, 0, 0.000314), 0.02);

    /// <summary>Source: ISO 9613-1, reference 343.2 m/s at 20 °C, from memory.</summary>
    [Fact]
    public void Sound_at_twenty_degrees_has_the_speed_of_the_standard() => Assert.Equal(343.2, SpeedOfSound.InDryAirMPerS(20), 0.05);

    /// <summary>
    /// Source: Horowitz and Hill, The Art of Electronics: 4.07 nV/√Hz for 1 kilohm at room temperature, 0.13 √R nV, from memory.
    /// </summary>
    [Theory]
    [InlineData(1_000, 4.07e-9)]
    [InlineData(10_000, 12.9e-9)]
    [InlineData(100, 1.29e-9)]
    public void Thermal_noise_is_that_of_the_textbook(double ohm, double voltsPerRootHz) =>
        Assert.Equal(1, ElectricalNoise.ThermalV(ohm, 1, 300) / voltsPerRootHz, 5e-3);

    /// <summary>kT/C noise at 300 K as tabulated for sampling circuits: 64, 20 and 6.4 µV to two digits, from memory.</summary>
    [Theory]
    [InlineData(1e-12, 64e-6, 0.5e-6)]
    [InlineData(10e-12, 20e-6, 0.5e-6)]
    [InlineData(100e-12, 6.4e-6, 0.05e-6)]
    public void Noise_on_a_capacitor_rounds_to_the_tabulated_one(double farad, double volt, double lastDigit) =>
        Assert.Equal(volt, Leakage.NoiseOnCapsuleV(300, farad), lastDigit);

    /// <summary>Normal distribution, Abramowitz and Stegun, table 26.1, from memory.</summary>
    [Theory]
    [InlineData(0.0, 0.5)]
    [InlineData(0.5, 0.6914625)]
    [InlineData(1.0, 0.8413447)]
    [InlineData(1.5, 0.9331928)]
    [InlineData(1.645, 0.9500151)]
    [InlineData(2.0, 0.9772499)]
    [InlineData(2.5, 0.9937903)]
    [InlineData(3.0, 0.9986501)]
    public void Conformance_one_limit_away_is_the_normal_integral(double uncertaintiesInside, double probability) =>
        Assert.Equal(probability, ConformanceProbability.Of(100 - uncertaintiesInside * 2, 2, new(null, 100)), 1e-7);

    /// <summary>Source: JCGM 106:2012, 7.4: with the value on a limit and the other far away, half of the values conform.</summary>
    [Fact]
    public void On_the_limit_half_of_the_true_values_conform() => Assert.Equal(0.5, ConformanceProbability.Of(10, 0.1, new(5, 10)), 1e-12);

    /// <summary>Source: IEC 61938: 48 V over 6.8 kilohm is 7.06 mA in each leg, 14.1 mA in both, from memory.</summary>
    [Fact]
    public void A_short_circuit_of_the_48_volt_supply_draws_the_printed_current() =>
        Assert.Equal(14.1e-3, PhantomSupply.P48.ShortCircuitA(48), 0.05e-3);

    /// <summary>0 dBu is 0.7746 V, 1 Pa is 93.98 dB: ITU and ISO 1683, from memory.</summary>
    [Theory]
    [InlineData(1000, 2.218)]
    [InlineData(774.6, 0.0)]
    public void Output_in_dBu_agrees_with_its_reference_voltage(double millivoltPerPascal, double dbu) =>
        Assert.Equal(dbu, Sensitivity.OutputDbu(Sensitivity.LevelDbRe1VPerPa(millivoltPerPascal), Sensitivity.OnePascalDb), 0.001);

    /// <summary>
    /// Bulk resistivity of gold at 20 °C, 22.1 nanoohm metre (CRC Handbook, from memory), over 100 nm: 0.22 ohms per square.
    /// </summary>
    [Fact]
    public void A_hundred_nanometres_of_bulk_gold_have_a_fifth_of_an_ohm() =>
        Assert.Equal(0.221, SheetResistance.BulkOhmPerSquare(FilmMaterials.GoldOhmM, 100e-9), 0.001);

    /// <summary>Source: Beranek, Acoustics: 6.02 dB for each doubling of distance from a point source.</summary>
    [Fact]
    public void Twice_the_distance_is_six_decibels() => Assert.Equal(-6.0206, NearField.DistanceDb(0.5, 1), 1e-4);
}
