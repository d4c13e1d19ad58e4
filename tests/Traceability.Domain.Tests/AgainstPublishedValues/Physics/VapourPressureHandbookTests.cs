using Traceability.Domain.Stages.ClimateSoak;
using Traceability.Domain.Tests.Sources;

namespace Traceability.Domain.Tests.AgainstPublishedValues.Physics;

/// <summary>Vapour pressure against steam tables, meteorological tables and the tables of building services.</summary>
public class VapourPressureHandbookTests
{
    private const string SteamTables = "The usual steam tables (IAPWS), saturated water, hPa, from memory";

    /// <summary>Saturated water, hPa, as in the usual steam tables (IAPWS), from memory.</summary>
    public static TheoryData<double, double> SteamTable =>
        new()
        {
            { 0.01, 6.117 },
            { 5, 8.726 },
            { 10, 12.28 },
            { 15, 17.06 },
            { 20, 23.39 },
            { 25, 31.70 },
            { 30, 42.47 },
            { 35, 56.29 },
            { 40, 73.85 },
            { 45, 95.95 },
            { 50, 123.5 },
            { 60, 199.5 },
            { 70, 312.0 },
            { 80, 474.1 },
            { 90, 701.8 },
            { 100, 1014.2 },
        };

    [Theory]
    [MemberData(nameof(SteamTable))]
    [From(SourceKind.Printed, SteamTables)]
    public void The_industrial_formula_agrees_with_the_steam_tables(double celsius, double hpa) =>
        Assert.Equal(1, SaturationVapourPressure.IapwsIf97Hpa(celsius) / hpa, 4e-4);

    /// <summary>The auxiliary equation for saturation against the same table.</summary>
    [Theory]
    [MemberData(nameof(SteamTable))]
    [From(SourceKind.Printed, SteamTables)]
    public void The_auxiliary_formula_agrees_with_the_steam_tables(double celsius, double hpa) =>
        Assert.Equal(1, SaturationVapourPressure.WagnerPrussHpa(celsius) / hpa, 4e-4);

    [Theory]
    [InlineData(300, 0.353658941e-2)]
    [InlineData(500, 0.263889776e1)]
    [InlineData(600, 0.123443146e2)]
    [From(SourceKind.Printed, "IAPWS R7-97(2012), table 35, all three verification values, MPa")]
    public void The_industrial_formula_meets_its_verification_table(double kelvin, double megapascal) =>
        Assert.Equal(1, SaturationVapourPressure.IapwsIf97Hpa(kelvin - 273.15) / 1e4 / megapascal, 2e-9);

    [Theory]
    [InlineData(0, 0.6112)]
    [InlineData(5, 0.8725)]
    [InlineData(10, 1.2280)]
    [InlineData(15, 1.7055)]
    [InlineData(20, 2.3388)]
    [InlineData(25, 3.1692)]
    [InlineData(30, 4.2460)]
    [From(SourceKind.Printed, "ASHRAE Handbook of Fundamentals, thermodynamic properties of water at saturation, kPa, from memory")]
    public void Hyland_and_Wexler_agree_with_the_printed_table(double celsius, double kilopascal) =>
        Assert.Equal(1, SaturationVapourPressure.HylandWexlerOverWaterHpa(celsius) / 10 / kilopascal, 2e-4);

    /// <summary>Over supercooled water the formulas part: Magnus reads 0.45 % above this table at -20 °C.</summary>
    [Theory]
    [InlineData(-20, 1.2540, 5e-3)]
    [InlineData(-10, 2.8627, 4e-3)]
    [InlineData(0, 6.1078, 4e-3)]
    [InlineData(10, 12.272, 4e-3)]
    [InlineData(20, 23.373, 4e-3)]
    [InlineData(30, 42.430, 4e-3)]
    [InlineData(40, 73.777, 4e-3)]
    [From(SourceKind.Printed, "Smithsonian Meteorological Tables, table 94 (Goff and Gratch), hPa, from memory")]
    public void Magnus_and_Sonntag_agree_with_the_meteorological_table_over_water(double celsius, double hpa, double magnusMayDiffer)
    {
        Assert.Equal(1, SaturationVapourPressure.MagnusOverWaterHpa(celsius) / hpa, magnusMayDiffer);
        Assert.Equal(1, SaturationVapourPressure.SonntagOverWaterHpa(celsius) / hpa, 2e-3);
    }

    [Theory]
    [InlineData(-40, 0.1283)]
    [InlineData(-30, 0.3798)]
    [InlineData(-20, 1.032)]
    [InlineData(-10, 2.597)]
    [InlineData(0, 6.1071)]
    [From(SourceKind.Printed, "Smithsonian Meteorological Tables, table 96 (Goff and Gratch), hPa, from memory")]
    public void Magnus_and_Sonntag_agree_with_the_meteorological_table_over_ice(double celsius, double hpa)
    {
        Assert.Equal(1, SaturationVapourPressure.MagnusOverIceHpa(celsius) / hpa, 4e-3);
        Assert.Equal(1, SaturationVapourPressure.SonntagOverIceHpa(celsius) / hpa, 2e-3);
    }

    [Theory]
    [InlineData(0, 4.85)]
    [InlineData(10, 9.40)]
    [InlineData(20, 17.3)]
    [InlineData(30, 30.4)]
    [From(SourceKind.Printed, "CRC Handbook of Chemistry and Physics, mass of vapour in saturated air, g/m3, from memory")]
    public void Saturated_air_holds_what_the_handbook_says(double celsius, double gramsPerM3) =>
        Assert.Equal(1, MoistAir.AbsoluteHumidityGPerM3(celsius, 100) / gramsPerM3, 5e-3);

    [Theory]
    [InlineData(20, 50, 9.3)]
    [InlineData(20, 60, 12.0)]
    [InlineData(25, 50, 13.9)]
    [InlineData(25, 60, 16.7)]
    [InlineData(30, 70, 23.9)]
    [From(SourceKind.Printed, "DIN 4108-5, dew points in tenths (first three; the others no document noted), from memory")]
    public void Dew_points_round_to_the_printed_ones(double celsius, double humidityPct, double dewPointC) =>
        Assert.Equal(dewPointC, DewPoint.MagnusC(celsius, humidityPct), 0.051);

    [Theory]
    [InlineData(20, 15, 59)]
    [InlineData(25, 20, 63)]
    [InlineData(30, 25, 67)]
    [From(SourceKind.Printed, "Table of the aspirated psychrometer, whole percents, near 1000 hPa, no document noted, from memory")]
    public void Wet_and_dry_bulb_give_the_printed_humidity(double dryC, double wetC, double humidityPct) =>
        Assert.Equal(humidityPct, MoistAir.HumidityFromPsychrometerPct(dryC, wetC, 1000), 1.0);

    [Fact]
    [From(SourceKind.Definition, "the formulas compared with each other, 5 to 55 °C")]
    public void All_formulas_agree_within_the_spread_that_the_literature_knows()
    {
        foreach (var celsius in new[] { 5.0, 20, 40, 55 })
        {
            double[] values = [.. Enum.GetValues<VapourFormula>().Select(f => SaturationVapourPressure.OverWaterHpa(f, celsius))];
            Assert.InRange(values.Max() / values.Min(), 1, 1.004);
        }
    }
}
