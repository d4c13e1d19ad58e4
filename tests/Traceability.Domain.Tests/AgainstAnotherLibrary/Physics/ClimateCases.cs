using Traceability.Domain.Stages.ClimateSoak;
using Traceability.Domain.Tests.Sources;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Physics;

/// <summary>D (climate).</summary>
internal static class ClimateCases
{
    private static readonly DateTimeOffset Start = new(2031, 1, 1, 0, 0, 0, TimeSpan.Zero);

    public static object? Compute(ExpectedValue v) =>
        (v.Formula, v.Name) switch
        {
            ("D1a", "Magnus over ice, hPa") => SaturationVapourPressure.MagnusOverIceHpa(v["t_C"]),
            ("D1a", _) => SaturationVapourPressure.OverWaterHpa(VapourFormula.Magnus, v["t_C"]),
            ("D1b", "Sonntag over ice, hPa") => SaturationVapourPressure.SonntagOverIceHpa(v["t_C"]),
            ("D1b", _) => SaturationVapourPressure.OverWaterHpa(VapourFormula.Sonntag, v["t_C"]),
            ("D1d", _) => SaturationVapourPressure.OverWaterHpa(VapourFormula.HylandWexler, v["t_C"]),
            ("D1e", "IAPWS-IF97 region 4 p_s(T), MPa") => SaturationVapourPressure.IapwsIf97Hpa(v["T_K"] - 273.15) / 1e4,
            ("D1e", _) => SaturationVapourPressure.OverWaterHpa(VapourFormula.IapwsIf97, v["t_C"]),
            ("D1f", _) => SaturationVapourPressure.OverWaterHpa(VapourFormula.WagnerPruss, v["t_C"]),
            ("D2", _) => MoistAir.EnhancementFactor(v["p_hPa"]),
            ("D3", "dew point Magnus, degC") => DewPoint.MagnusC(v["t_C"], v["rh"]),
            ("D3", _) => DewPoint.InvertedC(VapourFormula.Sonntag, v["t_C"], v["rh"]),
            ("D4", var name) when name.StartsWith("absolute", StringComparison.Ordinal) => MoistAir.AbsoluteHumidityGPerM3(
                v["t_C"],
                v["rh"]
            ),
            ("D4", _) => MoistAir.MixingRatioGPerKg(v["t_C"], v["rh"], v["p_hPa"]),
            ("D5", "condensation verdict") => DewPoint.Condenses(v["t_air"], v["rh"], v["t_part"]) ? "condenses" : "dry",
            ("D5", _) => DewPoint.CondensationMarginK(v["t_air"], v["rh"], v["t_part"]),
            ("D6", _) => MoistAir.HumidityAtPct(v["t_air"], v["rh"], v["t_part"]),
            ("D7", _) => MoistAir.HumidityFromPsychrometerPct(v["t"], v["tw"], v["p_hPa"]),
            ("D8", "max ramp between samples, K/min") => TemperatureRamp.BetweenSamples(Log(v)).KPerMinute,
            ("D8", _) => SoakConformity.Judge(Log(v), new("fixture", v["setpoint"], v["tol"], null, null, 0)).DwellMinutes,
            ("D9", var name) when name.StartsWith("RH error", StringComparison.Ordinal) => MoistAir.HumidityAtPct(
                v["t"],
                v["rh"],
                v["t"] + v["dt"]
            ),
            ("D9", _) => SpecimenLag.MinutesToWithin(v["T0"], v["Tf"], v["tau_min"], v["band_K"]),
            _ => null,
        };

    private static List<ClimateSample> Log(ExpectedValue v) =>
        [.. v.Rows("samples").Select(row => new ClimateSample(Start.AddMinutes(row[0]), row[1]))];
}
