using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>Speed of sound in air.</summary>
/// <remarks>Checks: published values E11, <c>HandbookTests</c>.</remarks>
public static class SpeedOfSound
{
    /// <summary>Dry ideal air, m/s: c = 331.3 sqrt(1 + t/273.15).</summary>
    /// <param name="temperatureC">t, °C, above absolute zero; good to 0.2 m/s near room temperature.</param>
    /// <exception cref="ArgumentOutOfRangeException">At or below absolute zero, or NaN.</exception>
    public static double InDryAirMPerS(double temperatureC) =>
        331.3 * Math.Sqrt(1 + Require.TemperatureC(temperatureC) / PhysicalConstants.ZeroCelsiusK);

    /// <summary>
    /// Moist air by Cramer: a polynomial of temperature, mole fraction of water, pressure and mole fraction of carbon dioxide, m/s.
    /// </summary>
    /// <param name="temperatureC">t, °C; fitted for 0 to 30, taken from -20 to 50.</param>
    /// <param name="pressurePa">p, Pa; fitted for 75 000 to 102 000, taken from 60 000 to 110 000.</param>
    /// <param name="humidityPct">RH, %; 0 to 100, with at most 6 % of water by moles.</param>
    /// <param name="carbonDioxideFraction">x_c, mole fraction; 0 to 0.01.</param>
    /// <remarks>
    /// Source: Cramer, J. Acoust. Soc. Am. 93 (1993) 2510, coefficients from memory; saturation pressure and enhancement factor are
    /// those of CIPM-81/91, as there.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double InMoistAirMPerS(double temperatureC, double pressurePa, double humidityPct, double carbonDioxideFraction = 0.0004)
    {
        var t = Require.Within(temperatureC, -20, 50);
        var p = Require.Within(pressurePa, 60_000, 110_000);
        var xc = Require.Within(carbonDioxideFraction, 0, 0.01);
        var xw = WaterFraction(t, p, Require.Within(humidityPct, 0, 100));
        if (xw > 0.06)
            throw new ArgumentOutOfRangeException(nameof(humidityPct), humidityPct, "makes the air wetter than the formula holds for");
        return 331.5024
            + t * (0.603055 - 0.000528 * t)
            + (51.471935 + t * (0.1495874 - 0.000782 * t)) * xw
            + (-1.82e-7 + t * (3.73e-8 - 2.93e-10 * t)) * p
            + (-85.20931 + t * (-0.228525 + 5.91e-5 * t)) * xc
            - 2.835149 * xw * xw
            - 2.15e-13 * p * p
            + 29.179762 * xc * xc
            + 0.000486 * xw * p * xc;
    }

    private static double WaterFraction(double t, double p, double humidityPct)
    {
        var kelvin = t + PhysicalConstants.ZeroCelsiusK;
        var saturationPa = Math.Exp(1.2811805e-5 * kelvin * kelvin - 1.9509874e-2 * kelvin + 34.04926034 - 6.3536311e3 / kelvin);
        var enhancement = 1.00062 + 3.14e-8 * p + 5.6e-7 * t * t;
        return humidityPct / 100 * enhancement * saturationPa / p;
    }
}
