using Traceability.Domain.Stages.Capsule;
using Traceability.Domain.Tests.Sources;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Physics;

/// <summary>B (the capsule as a capacitor).</summary>
internal static class CapsuleCases
{
    public static object? Compute(ExpectedValue v) =>
        (v.Formula, v.Name) switch
        {
            ("B1", "C0 = eps0 pi a^2/d, F") => CapsuleCapacitance.OfFlatFilmF(v["a_m"], v["d_m"]),
            ("B1", _) => CapsuleCapacitance.OfDeflectedFilmF(v["a_m"], v["d_m"], v["w0_m"]),
            ("B2", "centre deflection first order, m") => ElectrostaticPull.FirstOrderDeflectionM(Side(v)),
            ("B2", _) => ElectrostaticPull.DeflectionM(Side(v)),
            ("B3", var name) when name.StartsWith("membrane pull-in parameter", StringComparison.Ordinal) => PullIn.MembraneParameter,
            ("B3", "centre deflection at pull-in w0/d (exact ODE)") => PullIn.MembraneCentreShare,
            ("B3", var name) when name.StartsWith("coefficient k", StringComparison.Ordinal) => PullIn.MembraneCoefficient,
            ("B3", "coefficient, lumped with mean-displacement stiffness 8 pi T") => PullIn.MeanStiffnessCoefficient,
            ("B3", "coefficient, lumped with centre-displacement stiffness 4 pi T") => PullIn.CentreStiffnessCoefficient,
            ("B3", "Ritz (parabola) w0/d at pull-in") => PullIn.ParabolaCentreShare,
            ("B3", "pull-in voltage exact membrane, V") => PullIn.VoltageV(v["a_m"], v["d_m"], v["T"]),
            ("B3", "pull-in voltage lumped 8 pi T, V") => PullIn.VoltageV(PullIn.MeanStiffnessCoefficient, v["a_m"], v["d_m"], v["T"]),
            ("B3", "minimum tension for V = 0.8 V_PI, N/m") => PullIn.LeastTensionNPerM(v["V"], v["a_m"], v["d_m"]),
            ("B4", "softened frequency, Hz") => SpringSoftening.FlatRatio(Side(v)) * v["f0_Hz"],
            ("B4", "f/f0 exact about deflected state") => SpringSoftening.ExactRatio(Side(v)),
            ("B4", _) => SpringSoftening.FlatRatio(Side(v)),
            ("B5", "corner f=1/(2 pi R C), Hz") => LowCorner.CornerHz(v["R_ohm"], v["C_F"]),
            ("B5", _) => LowCorner.LevelDb(v["f"], v["fc"]),
            ("B6", "capsule DC voltage, V") => Leakage.CapsuleVoltageV(v["V"], v["R_bias"], v["R_leak"]),
            ("B6", "sensitivity change, dB") => Leakage.SensitivityChangeDb(v["R_bias"], v["R_leak"]),
            ("B6", "corner with leakage, Hz") => Leakage.CornerHz(v["R_bias"], v["R_leak"], v["C_F"]),
            ("B6", "kT/C noise voltage, V") => Leakage.NoiseOnCapsuleV(v["T_K"], v["C"]),
            ("B6", _) => Leakage.CurrentNoiseAPerRootHz(v["T_K"], v["R"]),
            ("B7", "level re 1 V/Pa, dB") => TensionSensitivity.LevelDb(Side(v)),
            ("B7", _) => TensionSensitivity.VPerPa(Side(v)),
            ("B8", _) => CapsuleCapacitance.StrayLossDb(v["C_F"], v["Cs_F"]),
            ("B9", var name) when name.Contains("for gap", StringComparison.Ordinal) => TensionSensitivity.ChangeByGapDb(v["d"], v["dd"]),
            ("B9", _) => TensionSensitivity.ChangeByVoltageDb(v["V0"], v["V1"]),
            ("B10", "mean field V/d, V/m") => ElectrostaticPull.FieldVPerM(v["V"], v["d"]),
            ("B10", _) => ElectrostaticPull.PressurePa(v["V"], v["d"]),
            _ => null,
        };

    private static PolarisedSide Side(ExpectedValue v) => new(v["V"], v["a_m"], v["d_m"], v["T"]);
}
