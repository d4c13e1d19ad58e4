using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.ClimateSoak;

/// <summary>
/// How much water the air holds. Relative humidity is always over liquid water, as the WMO defines it, also below 0 °C.
/// </summary>
/// <remarks>
/// Vapour pressure by the Magnus formula of <see cref="SaturationVapourPressure"/>, enhancement factor left out except where named.
/// Checks: published values D2, D4, D6, D7, D9-002.
/// </remarks>
public static class MoistAir
{
    /// <summary>Vapour pressure, hPa: e = RH/100 e_w(t).</summary>
    /// <param name="temperatureC">t, °C; -100 to 100.</param>
    /// <param name="humidityPct">RH, %; 0 to 120 (a fog or a sensor may read above 100).</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double VapourPressureHpa(double temperatureC, double humidityPct) =>
        Require.Within(humidityPct, 0, 120) / 100 * SaturationVapourPressure.MagnusOverWaterHpa(temperatureC);

    /// <summary>
    /// Enhancement factor, without unit: f = 1.0016 + 3.15e-6 p - 0.074/p. Saturation over water in air is that much higher than in
    /// vacuum.
    /// </summary>
    /// <param name="pressureHpa">p, hPa; 30 to 1100.</param>
    /// <remarks>Source: WMO-No. 8, annex 4.B, from memory.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside this range, or NaN.</exception>
    public static double EnhancementFactor(double pressureHpa) =>
        1.0016 + 3.15e-6 * Require.Within(pressureHpa, 30, 1100) - 0.074 / pressureHpa;

    /// <summary>Absolute humidity, g/m3: 216.679 e / T, e in hPa, T in K.</summary>
    /// <param name="temperatureC">t, °C; -100 to 100.</param>
    /// <param name="humidityPct">RH, %; 0 to 120.</param>
    /// <remarks>216.679 g K/J is 100 over the gas constant of water vapour, 0.461 51 J/(g K). Source: WMO-No. 8, from memory.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double AbsoluteHumidityGPerM3(double temperatureC, double humidityPct) =>
        216.679 * VapourPressureHpa(temperatureC, humidityPct) / (temperatureC + PhysicalConstants.ZeroCelsiusK);

    /// <summary>Mixing ratio, g of water per kg of dry air: 621.98 e / (p - e).</summary>
    /// <param name="temperatureC">t, °C; -100 to 100.</param>
    /// <param name="humidityPct">RH, %; 0 to 120.</param>
    /// <param name="pressureHpa">p, hPa; above the vapour pressure.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double MixingRatioGPerKg(double temperatureC, double humidityPct, double pressureHpa)
    {
        var vapour = VapourPressureHpa(temperatureC, humidityPct);
        if (!(Require.Positive(pressureHpa) > vapour))
            throw new ArgumentOutOfRangeException(nameof(pressureHpa), pressureHpa, "must be above the vapour pressure");
        return 621.98 * vapour / (pressureHpa - vapour);
    }

    /// <summary>
    /// Relative humidity of the same air brought to another temperature, %: RH e_w(t) / e_w(t'). Above 100 % it condenses.
    /// </summary>
    /// <param name="temperatureC">t, °C, where RH was read; -100 to 100.</param>
    /// <param name="humidityPct">RH, %; 0 to 120.</param>
    /// <param name="otherTemperatureC">t', °C: the surface of a part, a warmer corner of the cabinet.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double HumidityAtPct(double temperatureC, double humidityPct, double otherTemperatureC) =>
        100 * VapourPressureHpa(temperatureC, humidityPct) / SaturationVapourPressure.MagnusOverWaterHpa(otherTemperatureC);

    /// <summary>
    /// Relative humidity from an aspirated psychrometer, %: e = e_w(t_w) - 6.53e-4 (1 + 0.000944 t_w) p (t - t_w), RH = 100 e / e_w(t).
    /// </summary>
    /// <param name="dryBulbC">t, °C.</param>
    /// <param name="wetBulbC">t_w, °C; not frozen (0 or above), not above t.</param>
    /// <param name="pressureHpa">p, hPa; 30 to 1100.</param>
    /// <remarks>Source: WMO-No. 8, annex 4.B, from memory.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, a wet bulb so low that no vapour is left, or
    /// NaN.</exception>
    public static double HumidityFromPsychrometerPct(double dryBulbC, double wetBulbC, double pressureHpa)
    {
        Require.Within(wetBulbC, 0, dryBulbC);
        Require.Within(pressureHpa, 30, 1100);
        var vapour =
            SaturationVapourPressure.MagnusOverWaterHpa(wetBulbC)
            - 6.53e-4 * (1 + 0.000944 * wetBulbC) * pressureHpa * (dryBulbC - wetBulbC);
        if (vapour < 0)
            throw new ArgumentOutOfRangeException(nameof(wetBulbC), wetBulbC, "is lower than dry air would make it");
        return 100 * vapour / SaturationVapourPressure.MagnusOverWaterHpa(dryBulbC);
    }
}
