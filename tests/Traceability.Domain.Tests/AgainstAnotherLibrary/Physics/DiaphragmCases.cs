using Traceability.Domain.Stages.AcousticTest.Sensitivities;
using Traceability.Domain.Stages.Diaphragm;
using Traceability.Domain.Stages.FilmLot;
using Traceability.Domain.Tests.Sources;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Physics;

/// <summary>A (film and diaphragm), E11 and E12 (air), F19 (uncertainty).</summary>
internal static class DiaphragmCases
{
    public static object? Compute(ExpectedValue v) =>
        (v.Formula, v.Name) switch
        {
            ("A1", "f01 in vacuo, Hz") => MembraneModes.FundamentalHz(v["a_m"], v["T_N_per_m"], v["sigma_kg_per_m2"]),
            ("A1", var name) when name.StartsWith("mode ratio f", StringComparison.Ordinal) => MembraneModes.RatioToFundamental(
                name["mode ratio f".Length] - '0',
                name["mode ratio f0".Length] - '0'
            ),
            ("A2", "tension T, N/m") => Tension(v),
            ("A2", "film stress T/h, Pa") => MembraneTension.StressPa(Tension(v), v["h_m"]),
            ("A2", "biaxial strain (1-nu)T/(E h)") => MembraneTension.Strain(Tension(v), v["h_m"], v["E_Pa"], v["nu"]),
            ("A3", _) => ArealDensity.FromLayers(
                new(v["h_pet_m"], v["rho_pet"]),
                [.. v.Rows("layers").Select(layer => new FilmLayer(layer[0], layer[1]))]
            ),
            ("A4", var name) => AirLoadCoefficient(name),
            ("A5", var name) when name.StartsWith("f_air/f_vac one-mode", StringComparison.Ordinal) => AirLoad.FrequencyRatio(
                AirLoad.Coefficient(BaffleOf(name)),
                AirLoad.MassRatio(v["rho_air"], v["a_m"], v["sigma"])
            ),
            ("A5", var name) when name.StartsWith("f_air/f_vac 10-mode", StringComparison.Ordinal) => AirLoadGalerkin.FrequencyRatio(
                BaffleOf(name),
                v["mu"]
            ),
            ("A5", _) => MembraneTension.FromResonanceInAir(v["f_air_Hz"], v["a_m"], v["sigma"], v["rho_air"], v["Gamma"]),
            ("A6", "f2 = f1 a1/a2 (vacuum scaling), Hz") => RingExpectation.InSameMountingHz(v["f1"], v["a1"], v["a2"], 0.009, 0, 0),
            ("A6", _) => RingExpectation.InSameMountingHz(v["f1"], v["a1"], v["a2"], v["sigma"], v["rho_air"], v["Gamma"]),
            ("A7", "tension change, N/m") => ByTemperature(v),
            ("A7", "relative resonance change") => TensionShift.RelativeResonanceChange(v["T0"], ByTemperature(v)),
            ("A8", "hygroscopic tension change, N/m") => ByHumidity(v),
            ("A8", "relative resonance change") => TensionShift.RelativeResonanceChange(v["T0"], ByHumidity(v)),
            ("A9", _) => BendingCheck.Ratio(v["E"], v["h"], v["nu"], v["T"], v["a"]),
            ("A10", var name) when name.StartsWith("centre", StringComparison.Ordinal) => StaticResponse.CentreM(
                v["p_Pa"],
                v["a_m"],
                v["T"]
            ),
            ("A10", var name) when name.StartsWith("mean", StringComparison.Ordinal) => StaticResponse.MeanM(v["p_Pa"], v["a_m"], v["T"]),
            ("A10", _) => StaticResponse.AcousticComplianceM5PerN(v["a_m"], v["T"]),
            ("E11", "c Cramer 1993, m/s") => SpeedOfSound.InMoistAirMPerS(v["t_C"], v["p_Pa"], 100 * v["h"], v["x_CO2"]),
            ("E11", _) => SpeedOfSound.InDryAirMPerS(v["t_C"]),
            ("E12", "air density ideal moist, kg/m3") => AirDensity.KgPerM3(v["t_C"], v["p_Pa"], 100 * v["h"]),
            ("E12", _) => AmbientCorrection.PressureLevelDb(new Ambient(v["t"], v["p"], 100 * v["h"])),
            ("F19", var name) when name.StartsWith("relative u(f01)", StringComparison.Ordinal) => TensionUncertainty.OfResonanceInVacuo(
                v["uT"],
                v["us"],
                v["ua"]
            ),
            ("F19", _) => TensionUncertainty.OfTensionInVacuo(v["uf"], v["ua"], v["us"]),
            _ => null,
        };

    private static double Tension(ExpectedValue v) => MembraneTension.FromResonanceInVacuo(v["f01_Hz"], v["a_m"], v["sigma"]);

    private static double ByTemperature(ExpectedValue v) =>
        TensionShift.ByTemperatureNPerM(new(v["E"], v["nu"], v["h"]), v["dTemp_K"], v["alpha_ring"], v["alpha_film"]);

    private static double ByHumidity(ExpectedValue v) =>
        TensionShift.ByHumidityNPerM(new(v["E"], v["nu"], v["h"]), v["dRH_percent"], v["beta_per_percentRH"]);

    private static BaffleCondition BaffleOf(string name) =>
        name[(name.IndexOf('(', StringComparison.Ordinal) + 1)..^1] switch
        {
            "baf1" => BaffleCondition.BaffledOneSide,
            "baf2" => BaffleCondition.BaffledBothSides,
            _ => BaffleCondition.Unbaffled,
        };

    private static double AirLoadCoefficient(string name)
    {
        var shape =
            name.Contains("clamped-plate", StringComparison.Ordinal) ? ModeShape.ClampedPlate
            : name.Contains("piston", StringComparison.Ordinal) ? ModeShape.RigidPiston
            : name.Contains("parabola", StringComparison.Ordinal) ? ModeShape.StaticParabola
            : ModeShape.MembraneFundamental;
        return name.Contains("unbaffled", StringComparison.Ordinal)
            ? AirLoadIntegrals.UnbaffledBothSides(shape)
            : AirLoadIntegrals.BaffledOneSide(shape);
    }
}
