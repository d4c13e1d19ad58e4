using Traceability.Domain.Stages.Diaphragm;

namespace Traceability.Domain.Stages.AcousticTest.Sensitivities;

/// <summary>Air of the moment, as it stands beside every acoustic reading.</summary>
/// <param name="TemperatureC">Temperature, °C.</param>
/// <param name="PressurePa">Pressure at the place, Pa.</param>
/// <param name="HumidityPct">Relative humidity, %.</param>
public readonly record struct Ambient(double TemperatureC, double PressurePa, double HumidityPct)
{
    /// <summary>Reference conditions of electroacoustics: 23 °C, 101 325 Pa, 50 %. IEC 61094 series, from memory.</summary>
    public static Ambient Reference { get; } = new(23, 101_325, 50);

    /// <summary>Characteristic impedance of the air, Pa s/m: rho c, by <see cref="AirDensity"/> and the formula of Cramer.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Air outside the range of either formula, or NaN.</exception>
    public double ImpedancePaSPerM() =>
        AirDensity.KgPerM3(TemperatureC, PressurePa, HumidityPct) * SpeedOfSound.InMoistAirMPerS(TemperatureC, PressurePa, HumidityPct);
}

/// <summary>Correction of a level for the air of the moment.</summary>
/// <remarks>Checks: published value E12-004.</remarks>
public static class AmbientCorrection
{
    /// <summary>
    /// Sound pressure level that a source of constant volume velocity gives in other air, dB re that in the reference air:
    /// 20 lg(rho c / (rho0 c0)).
    /// </summary>
    /// <param name="now">Air of the moment.</param>
    /// <param name="reference">Air to compare with; null for 23 °C, 101 325 Pa, 50 %.</param>
    /// <exception cref="ArgumentOutOfRangeException">Air outside the range of the formulas, or NaN.</exception>
    public static double PressureLevelDb(Ambient now, Ambient? reference = null) =>
        20 * Math.Log10(now.ImpedancePaSPerM() / (reference ?? Ambient.Reference).ImpedancePaSPerM());
}
