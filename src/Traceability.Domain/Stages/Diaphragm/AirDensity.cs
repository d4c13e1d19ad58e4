using Traceability.Domain.Stages.ClimateSoak;
using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>
/// Density of moist air, an ideal mixture: rho = (p - e)/(287.05 T) + e/(461.495 T), e = RH/100 of the Magnus saturation pressure.
/// </summary>
/// <remarks>
/// p pressure, Pa; T = t + 273.15 K; gas constants of dry air and of water vapour in J/(kg K). Good to about 0.1 % at room conditions
/// (the compressibility and enhancement factors are left out). Source: common meteorological practice, constants from memory.
/// Checks: published values E12-001, E12-002; the CIPM-81/91 value for standard conditions in <c>HandbookTests</c>.
/// </remarks>
public static class AirDensity
{
    private const double DryAirJPerKgK = 287.05;
    private const double VapourJPerKgK = 461.495;

    /// <summary>Density, kg/m3.</summary>
    /// <param name="temperatureC">t, °C; -45 to 60.</param>
    /// <param name="pressurePa">p, Pa (not hPa): the pressure at the place, not reduced to sea level; 10 000 to 200 000.</param>
    /// <param name="humidityPct">RH, %; 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN. A pressure in hPa is caught so.</exception>
    public static double KgPerM3(double temperatureC, double pressurePa, double humidityPct)
    {
        Require.Within(temperatureC, -45, 60);
        Require.Within(pressurePa, 10_000, 200_000);
        Require.Within(humidityPct, 0, 100);
        var vapourPa = humidityPct * SaturationVapourPressure.MagnusOverWaterHpa(temperatureC);
        var kelvin = temperatureC + PhysicalConstants.ZeroCelsiusK;
        return (pressurePa - vapourPa) / (DryAirJPerKgK * kelvin) + vapourPa / (VapourJPerKgK * kelvin);
    }
}
