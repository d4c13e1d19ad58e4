namespace Traceability.Domain.Values;

/// <summary>Constants of nature that several stages share. Source: CODATA 2018 and the SI (from memory).</summary>
public static class PhysicalConstants
{
    /// <summary>Electric constant, F/m (CODATA 2018).</summary>
    public const double VacuumPermittivityFPerM = 8.8541878128e-12;

    /// <summary>Boltzmann constant, J/K (exact in the SI since 2019).</summary>
    public const double BoltzmannJPerK = 1.380649e-23;

    /// <summary>0 °C in kelvin (exact).</summary>
    public const double ZeroCelsiusK = 273.15;

    /// <summary>Reference sound pressure in air, 20 µPa (ISO 1683, from memory).</summary>
    public const double ReferencePressurePa = 20e-6;

    /// <summary>First zero of the Bessel function J0 (Abramowitz and Stegun, table 9.5).</summary>
    public const double FirstZeroOfJ0 = 2.404825557695773;
}
