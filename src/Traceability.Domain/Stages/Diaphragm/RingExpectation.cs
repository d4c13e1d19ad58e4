using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>
/// What the resonance should read on the ring, from the reading in the tuning jig at the same tension:
/// f2 = f1 (a1/a2) sqrt((sigma + Gamma1 rho1 a1) / (sigma + Gamma2 rho2 a2)).
/// </summary>
/// <remarks>
/// f1, a1 resonance (Hz) and radius (m) in the jig, f2, a2 on the ring; Gamma, rho air load and air density there. Assumes that gluing
/// changes neither tension nor film. The effective exponent of a1/a2 lies between 1 (vacuum) and 1.5 (air mass alone), about 1.3 for
/// usual films, so the simple rule f1 a1/a2 is 1 to 16 % off. Derived from <see cref="MembraneTension"/>. Checks: published values A6.
/// </remarks>
public static class RingExpectation
{
    /// <summary>Expected resonance on the ring, Hz, mounting and air of jig and ring each their own.</summary>
    /// <param name="jig">Reading in the jig.</param>
    /// <param name="jigAirLoad">Gamma of the jig; not negative.</param>
    /// <param name="ringRadiusM">a2, m; greater than zero.</param>
    /// <param name="ringAirDensityKgPerM3">rho2, kg/m3; not negative.</param>
    /// <param name="ringAirLoad">Gamma of the ring; not negative.</param>
    /// <param name="arealDensityKgPerM2">sigma, kg/m2; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double ResonanceHz(
        AirLoadReading jig,
        double jigAirLoad,
        double ringRadiusM,
        double ringAirDensityKgPerM3,
        double ringAirLoad,
        double arealDensityKgPerM2
    )
    {
        var tension = MembraneTension.FromResonanceInAir(
            jig.ResonanceHz,
            jig.RadiusM,
            arealDensityKgPerM2,
            jig.AirDensityKgPerM3,
            jigAirLoad
        );
        return MembraneModes.FundamentalInAirHz(ringRadiusM, tension, arealDensityKgPerM2, ringAirDensityKgPerM3, ringAirLoad);
    }

    /// <summary>Expected resonance on the ring, Hz, in the same air and the same kind of mounting as in the jig.</summary>
    /// <param name="jigResonanceHz">f1, Hz; greater than zero.</param>
    /// <param name="jigRadiusM">a1, m; greater than zero.</param>
    /// <param name="ringRadiusM">a2, m; greater than zero.</param>
    /// <param name="arealDensityKgPerM2">sigma, kg/m2; greater than zero.</param>
    /// <param name="airDensityKgPerM3">rho, kg/m3; zero for vacuum.</param>
    /// <param name="airLoadCoefficient">Gamma; not negative.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double InSameMountingHz(
        double jigResonanceHz,
        double jigRadiusM,
        double ringRadiusM,
        double arealDensityKgPerM2,
        double airDensityKgPerM3,
        double airLoadCoefficient
    ) =>
        ResonanceHz(
            new AirLoadReading(jigResonanceHz, jigRadiusM, airDensityKgPerM3),
            airLoadCoefficient,
            ringRadiusM,
            airDensityKgPerM3,
            airLoadCoefficient,
            arealDensityKgPerM2
        );

    /// <summary>
    /// Drift after bonding, without unit: measured over expected less one. Below zero the film gave way: creep, slip in the glue, a bad
    /// cure.
    /// </summary>
    /// <param name="measuredHz">Resonance read on the ring, Hz; greater than zero.</param>
    /// <param name="expectedHz">Resonance expected on the ring, Hz; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double RelativeDrift(double measuredHz, double expectedHz) =>
        Require.Positive(measuredHz) / Require.Positive(expectedHz) - 1;
}
