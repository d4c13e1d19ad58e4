using MathNet.Numerics.RootFinding;
using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.ClimateSoak;

/// <summary>The temperature at which the air is saturated over water, and whether a part is wet.</summary>
/// <remarks>Below 0 °C this is the dew point over supercooled water, not the frost point. Checks: published values D3, D5.</remarks>
public static class DewPoint
{
    /// <summary>
    /// Dew point by the inverted Magnus formula, °C: t_d = 243.12 x / (17.62 - x), x = ln(RH/100) + 17.62 t / (243.12 + t).
    /// </summary>
    /// <param name="temperatureC">t, °C; -100 to 100.</param>
    /// <param name="humidityPct">RH, %; above 0, at most 120.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN. Air without water has no dew point.</exception>
    public static double MagnusC(double temperatureC, double humidityPct)
    {
        Require.Within(temperatureC, -100, 100);
        Require.Positive(humidityPct);
        Require.Within(humidityPct, 0, 120);
        var x = Math.Log(humidityPct / 100) + 17.62 * temperatureC / (243.12 + temperatureC);
        return 243.12 * x / (17.62 - x);
    }

    /// <summary>Dew point by numerical inversion of any of the formulas, °C.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="temperatureC">t, °C, inside the range of the formula.</param>
    /// <param name="humidityPct">RH, %; above 0, at most 100.</param>
    /// <returns>The dew point; null when it lies below the range of the formula.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double? InvertedC(VapourFormula formula, double temperatureC, double humidityPct)
    {
        Require.Positive(humidityPct);
        Require.Within(humidityPct, 0, 100);
        var vapour = humidityPct / 100 * SaturationVapourPressure.OverWaterHpa(formula, temperatureC);
        double lowest = formula switch
        {
            VapourFormula.Magnus or VapourFormula.Sonntag => -100,
            VapourFormula.HylandWexler => -50,
            _ => 0,
        };
        if (vapour < SaturationVapourPressure.OverWaterHpa(formula, lowest))
            return null;
        return Brent.FindRoot(
            t => Math.Log(SaturationVapourPressure.OverWaterHpa(formula, t) / vapour),
            lowest,
            temperatureC + 1e-9,
            1e-10,
            200
        );
    }

    /// <summary>How far a part is above the dew point of the air round it, K (Magnus). At or below zero water condenses on it.</summary>
    /// <param name="airC">Air temperature, °C; -100 to 100.</param>
    /// <param name="humidityPct">Relative humidity of the air, %; above 0, at most 120.</param>
    /// <param name="partC">Temperature of the part's surface, °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double CondensationMarginK(double airC, double humidityPct, double partC) =>
        Require.TemperatureC(partC) - MagnusC(airC, humidityPct);

    /// <summary>Whether water condenses on the part: its surface is at the dew point or below.</summary>
    /// <param name="airC">Air temperature, °C; -100 to 100.</param>
    /// <param name="humidityPct">Relative humidity of the air, %; above 0, at most 120.</param>
    /// <param name="partC">Temperature of the part's surface, °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static bool Condenses(double airC, double humidityPct, double partC) => CondensationMarginK(airC, humidityPct, partC) <= 0;
}
