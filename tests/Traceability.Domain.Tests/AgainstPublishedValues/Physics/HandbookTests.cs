using Traceability.Domain.Stages.AcousticTest.Noise;
using Traceability.Domain.Stages.AcousticTest.Sensitivities;
using Traceability.Domain.Stages.BoardSet;
using Traceability.Domain.Stages.Capsule;
using Traceability.Domain.Stages.Diaphragm;
using Traceability.Domain.Stages.FilmLot;
using Traceability.Domain.Tests.Sources;
using Traceability.Domain.Values.Limits;

namespace Traceability.Domain.Tests.AgainstPublishedValues.Physics;

/// <summary>Single printed values, each with its source.</summary>
public class HandbookTests
{
    [Fact]
    [From(SourceKind.Printed, "Pelesko and Bernstein, Modeling MEMS and NEMS, 0.789 for the unit disc, from memory")]
    public void Pull_in_of_the_disc_rounds_to_the_textbook() => Assert.Equal(0.789, Math.Round(PullIn.MembraneParameter, 3), 1e-9);

    /// <summary>Plate on a spring: V^2 = 8 k d^3 / (27 eps0 A).</summary>
    [Fact]
    [From(SourceKind.Printed, "Senturia, Microsystem Design, chapter 6, from memory")]
    public void The_lumped_coefficient_is_that_of_the_plate_on_a_spring()
    {
        const double a = 0.01,
            d = 30e-6,
            tension = 50;
        var stiffness = 8 * Math.PI * tension;
        var textbook = Math.Sqrt(8 * stiffness * Math.Pow(d, 3) / (27 * 8.8541878128e-12 * Math.PI * a * a));
        Assert.Equal(textbook, PullIn.VoltageV(PullIn.MeanStiffnessCoefficient, a, d, tension), 1e-9);
    }

    [Fact]
    [From(SourceKind.Printed, "ICAO standard atmosphere (ISO 2533), sea level, 15 °C, dry: 1.2250 kg/m3 and 340.294 m/s")]
    public void Dry_air_at_fifteen_degrees_is_the_standard_atmosphere()
    {
        Assert.Equal(1.2250, AirDensity.KgPerM3(15, 101_325, 0), 0.0002);
        Assert.Equal(340.294, SpeedOfSound.InDryAirMPerS(15), 0.05);
    }

    /// <summary>The ideal gas is good to 0.1 %.</summary>
    [Fact]
    [From(SourceKind.Printed, "CRC Handbook of Chemistry and Physics, dry air at 0 °C and 1 atm, 1.293 kg/m3, from memory")]
    public void Dry_air_at_zero_degrees_is_that_of_the_handbook() => Assert.Equal(1, AirDensity.KgPerM3(0, 101_325, 0) / 1.293, 1e-3);

    /// <summary>The ideal mixture reads 0.05 % lower.</summary>
    [Fact]
    [From(SourceKind.Printed, "CIPM-81/91 equation, 20 °C, 101 325 Pa, 50 %: 1.1992 kg/m3, from memory")]
    public void Moist_air_agrees_with_the_metrologists_equation() => Assert.Equal(1.1992, AirDensity.KgPerM3(20, 101_325, 50), 0.0012);

    [Fact]
    [From(SourceKind.Printed, "Cramer, J. Acoust. Soc. Am. 93 (1993) 2510, dry air at 0 °C, 331.46 m/s, from memory")]
    public void Cramers_formula_gives_his_own_value_for_dry_air() =>
        Assert.Equal(331.46, SpeedOfSound.InMoistAirMPerS(0, 101_325, 0, 0.000314), 0.02);

    [Fact]
    [From(SourceKind.Printed, "ISO 9613-1, reference 343.2 m/s at 20 °C, from memory")]
    public void Sound_at_twenty_degrees_has_the_speed_of_the_standard() => Assert.Equal(343.2, SpeedOfSound.InDryAirMPerS(20), 0.05);

    /// <summary>0.13 nV times the root of the resistance in ohms.</summary>
    [Theory]
    [InlineData(1_000, 4.07e-9)]
    [InlineData(10_000, 12.9e-9)]
    [InlineData(100, 1.29e-9)]
    [From(SourceKind.Printed, "Horowitz and Hill, The Art of Electronics, 4.07 nV/√Hz for 1 kilohm at room temperature, from memory")]
    public void Thermal_noise_is_that_of_the_textbook(double ohm, double voltsPerRootHz) =>
        Assert.Equal(1, ElectricalNoise.ThermalV(ohm, 1, 300) / voltsPerRootHz, 5e-3);

    [Theory]
    [InlineData(1e-12, 64e-6, 0.5e-6)]
    [InlineData(10e-12, 20e-6, 0.5e-6)]
    [InlineData(100e-12, 6.4e-6, 0.05e-6)]
    [From(SourceKind.Printed, "Tables of kT/C noise at 300 K for sampling circuits, two digits, no document noted, from memory")]
    public void Noise_on_a_capacitor_rounds_to_the_tabulated_one(double farad, double volt, double lastDigit) =>
        Assert.Equal(volt, Leakage.NoiseOnCapsuleV(300, farad), lastDigit);

    [Theory]
    [InlineData(0.0, 0.5)]
    [InlineData(0.5, 0.6914625)]
    [InlineData(1.0, 0.8413447)]
    [InlineData(1.5, 0.9331928)]
    [InlineData(1.645, 0.9500151)]
    [InlineData(2.0, 0.9772499)]
    [InlineData(2.5, 0.9937903)]
    [InlineData(3.0, 0.9986501)]
    [From(SourceKind.Printed, "Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1, normal distribution, from memory")]
    public void Conformance_one_limit_away_is_the_normal_integral(double uncertaintiesInside, double probability) =>
        Assert.Equal(probability, ConformanceProbability.Of(100 - uncertaintiesInside * 2, 2, new(null, 100)), 1e-7);

    /// <summary>With the value on a limit and the other far away, half of the values conform.</summary>
    [Fact]
    [From(SourceKind.Printed, "JCGM 106:2012, 7.4")]
    public void On_the_limit_half_of_the_true_values_conform() => Assert.Equal(0.5, ConformanceProbability.Of(10, 0.1, new(5, 10)), 1e-12);

    /// <summary>48 V over 6.8 kilohm is 7.06 mA in each leg, 14.1 mA in both.</summary>
    [Fact]
    [From(SourceKind.Printed, "IEC 61938, from memory")]
    public void A_short_circuit_of_the_48_volt_supply_draws_the_printed_current() =>
        Assert.Equal(14.1e-3, PhantomSupply.P48.ShortCircuitA(48), 0.05e-3);

    [Theory]
    [InlineData(1000, 2.218)]
    [InlineData(774.6, 0.0)]
    [From(SourceKind.Printed, "0 dBu is 0.7746 V (ITU), 1 Pa is 93.98 dB (ISO 1683), from memory")]
    public void Output_in_dBu_agrees_with_its_reference_voltage(double millivoltPerPascal, double dbu) =>
        Assert.Equal(dbu, Sensitivity.OutputDbu(Sensitivity.LevelDbRe1VPerPa(millivoltPerPascal), Sensitivity.OnePascalDb), 0.001);

    /// <summary>Over 100 nm: 0.22 ohms per square.</summary>
    [Fact]
    [From(SourceKind.Printed, "CRC Handbook of Chemistry and Physics, gold at 20 °C, 22.1 nanoohm metre, from memory")]
    public void A_hundred_nanometres_of_bulk_gold_have_a_fifth_of_an_ohm() =>
        Assert.Equal(0.221, SheetResistance.BulkOhmPerSquare(FilmMaterials.GoldOhmM, 100e-9), 0.001);

    [Fact]
    [From(SourceKind.Printed, "Beranek, Acoustics, 6.02 dB for each doubling of distance from a point source")]
    public void Twice_the_distance_is_six_decibels() => Assert.Equal(-6.0206, NearField.DistanceDb(0.5, 1), 1e-4);
}
