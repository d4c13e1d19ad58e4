using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>
/// The air that moves with a film: f_air = f_vac / sqrt(1 + Gamma mu), mu = rho a / sigma.
/// </summary>
/// <remarks>
/// <para>
/// Gamma is the co-moving mass over rho a times the modal mass over sigma; rho air density, kg/m3; a active radius, m; sigma areal density,
/// kg/m2. Incompressible air, k a much below 1 (at 900 Hz and 12.5 mm k a = 0.21), no backplate within about one radius, no closed cavity.
/// One-mode Rayleigh estimate, an upper bound of the frequency: 0.02 % high without baffle, 0.2 to 0.4 % high with one, as
/// <see cref="AirLoadGalerkin"/> shows.
/// </para>
/// <para>
/// A real ring lies between <see cref="Unbaffled"/> and <see cref="BaffledBothSides"/>: calibrate the fixture once with
/// <see cref="Calibrate"/>. Sources: Lamb, Proc. R. Soc. A 98 (1920) 205 for the idea and the clamped plate; the integrals are those of
/// <see cref="AirLoadIntegrals"/>. Checks: published values A4, A5, and <c>AirLoadTests</c>, which computes the constants anew.
/// </para>
/// </remarks>
public static class AirLoad
{
    /// <summary>Gamma of the membrane fundamental in a baffle, one side.</summary>
    public const double BaffledOneSide = 0.7464351568936679;

    /// <summary>Gamma of the membrane fundamental in a baffle, both sides: twice that of one.</summary>
    public const double BaffledBothSides = 2 * BaffledOneSide;

    /// <summary>Gamma of the membrane fundamental on an open ring, both sides together.</summary>
    public const double Unbaffled = 0.9859263216101056;

    /// <summary>
    /// Gamma to begin with for a ring held by a jig whose own value nobody has measured yet: half-way between the open ring and the wide
    /// plate. Common practice, no source; the tension is uncertain by some 12 % until the fixture is calibrated.
    /// </summary>
    public const double UncalibratedFixture = (Unbaffled + BaffledBothSides) / 2;

    /// <summary>Gamma of the membrane fundamental in one of the three mountings of the textbooks.</summary>
    /// <param name="baffle">How the film is mounted.</param>
    public static double Coefficient(BaffleCondition baffle) =>
        baffle switch
        {
            BaffleCondition.BaffledOneSide => BaffledOneSide,
            BaffleCondition.BaffledBothSides => BaffledBothSides,
            BaffleCondition.Unbaffled => Unbaffled,
            _ => throw new ArgumentOutOfRangeException(nameof(baffle), baffle, "is no known mounting"),
        };

    /// <summary>mu = rho a / sigma, without unit.</summary>
    /// <param name="airDensityKgPerM3">rho, kg/m3; not negative.</param>
    /// <param name="radiusM">a, m; greater than zero.</param>
    /// <param name="arealDensityKgPerM2">sigma, kg/m2; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double MassRatio(double airDensityKgPerM3, double radiusM, double arealDensityKgPerM2) =>
        Require.NotNegative(airDensityKgPerM3) * Require.Positive(radiusM) / Require.Positive(arealDensityKgPerM2);

    /// <summary>f_air / f_vac = 1 / sqrt(1 + Gamma mu), without unit.</summary>
    /// <param name="coefficient">Gamma; not negative.</param>
    /// <param name="massRatio">mu; not negative.</param>
    /// <exception cref="ArgumentOutOfRangeException">A negative input, or NaN.</exception>
    public static double FrequencyRatio(double coefficient, double massRatio) =>
        1 / Math.Sqrt(1 + Require.NotNegative(coefficient) * Require.NotNegative(massRatio));

    /// <summary>
    /// Gamma of a fixture from two readings of one film at one tension, in two air densities or at two radii:
    /// (f1 a1)^2 (sigma + Gamma rho1 a1) = (f2 a2)^2 (sigma + Gamma rho2 a2).
    /// </summary>
    /// <param name="first">First reading.</param>
    /// <param name="second">Second reading, whose rho a differs from the first one's.</param>
    /// <param name="arealDensityKgPerM2">sigma, kg/m2; greater than zero.</param>
    /// <returns>Gamma; a value far outside 0.5 to 2 tells of a wrong reading, not of a strange fixture.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or two readings that determine no Gamma.</exception>
    public static double Calibrate(AirLoadReading first, AirLoadReading second, double arealDensityKgPerM2)
    {
        Require.Positive(arealDensityKgPerM2);
        var (speed1, air1) = first.Parts();
        var (speed2, air2) = second.Parts();
        var denominator = speed2 * air2 - speed1 * air1;
        var coefficient = arealDensityKgPerM2 * (speed1 - speed2) / denominator;
        return double.IsFinite(coefficient) && coefficient >= 0
            ? coefficient
            : throw new ArgumentOutOfRangeException(
                nameof(second),
                "the two readings determine no air load: they must differ in air density or radius"
            );
    }
}

/// <summary>One resonance, read to calibrate a fixture.</summary>
/// <param name="ResonanceHz">f, Hz.</param>
/// <param name="RadiusM">a, m.</param>
/// <param name="AirDensityKgPerM3">rho, kg/m3.</param>
public readonly record struct AirLoadReading(double ResonanceHz, double RadiusM, double AirDensityKgPerM3)
{
    internal (double SpeedSquared, double AirMass) Parts() =>
        (Math.Pow(Require.Positive(ResonanceHz) * Require.Positive(RadiusM), 2), Require.NotNegative(AirDensityKgPerM3) * RadiusM);
}
