using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>
/// Tension, stress and strain of a film from its resonance.
/// </summary>
/// <remarks>
/// <para>
/// In air: T = (2 pi a f / j01)^2 (sigma + Gamma rho a), which is sigma (2 pi a f / j01)^2 (1 + Gamma mu) with mu = rho a / sigma.
/// T tension, N/m; a active radius, m; f resonance f01, Hz; j01 first zero of J0; sigma areal density, kg/m2; rho air density, kg/m3;
/// Gamma coefficient of the co-moving air, see <see cref="AirLoad"/>; Gamma = 0 or rho = 0 is the membrane in vacuo.
/// </para>
/// <para>
/// Valid for a film without bending stiffness (see <see cref="BendingCheck"/>), with even tension, far from a backplate and from a closed
/// cavity, and while k a &lt; 0.3. For a few micrometres of film the air weighs more than the film: leaving it out is wrong by a factor.
/// Sources: Rayleigh, Theory of Sound I, sections 200 ff.; Kinsler and Frey, chapter 4 (from memory). Checks: published values A2, A5.
/// </para>
/// </remarks>
public static class MembraneTension
{
    /// <summary>Tension from the resonance in air, N/m.</summary>
    /// <param name="resonanceHz">f, resonance in air, Hz; greater than zero.</param>
    /// <param name="radiusM">a, active radius, m; greater than zero.</param>
    /// <param name="arealDensityKgPerM2">sigma, kg/m2; greater than zero.</param>
    /// <param name="airDensityKgPerM3">rho, kg/m3, of the moment of the reading; zero for vacuum.</param>
    /// <param name="airLoadCoefficient">Gamma of the fixture; zero for vacuum.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length, frequency or density that is not positive, a negative air load, or
    /// NaN.</exception>
    public static double FromResonanceInAir(
        double resonanceHz,
        double radiusM,
        double arealDensityKgPerM2,
        double airDensityKgPerM3,
        double airLoadCoefficient
    )
    {
        Require.Positive(resonanceHz);
        Require.Positive(radiusM);
        Require.Positive(arealDensityKgPerM2);
        Require.NotNegative(airDensityKgPerM3);
        Require.NotNegative(airLoadCoefficient);
        var waveSpeed = 2 * Math.PI * radiusM * resonanceHz / PhysicalConstants.FirstZeroOfJ0;
        return waveSpeed * waveSpeed * (arealDensityKgPerM2 + airLoadCoefficient * airDensityKgPerM3 * radiusM);
    }

    /// <summary>Tension from the resonance in vacuo, N/m: T = sigma (2 pi a f / j01)^2.</summary>
    /// <param name="resonanceHz">f, Hz; greater than zero.</param>
    /// <param name="radiusM">a, m; greater than zero.</param>
    /// <param name="arealDensityKgPerM2">sigma, kg/m2; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double FromResonanceInVacuo(double resonanceHz, double radiusM, double arealDensityKgPerM2) =>
        FromResonanceInAir(resonanceHz, radiusM, arealDensityKgPerM2, 0, 0);

    /// <summary>Stress in the film, Pa: s = T / h.</summary>
    /// <param name="tensionNPerM">T, N/m; not negative.</param>
    /// <param name="thicknessM">h, m, of the load-bearing film; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A negative tension, a thickness that is not positive, or NaN.</exception>
    public static double StressPa(double tensionNPerM, double thicknessM) =>
        Require.NotNegative(tensionNPerM) / Require.Positive(thicknessM);

    /// <summary>Equi-biaxial strain, without unit: eps = (1 - nu) T / (E h). Elastic, isotropic film.</summary>
    /// <param name="tensionNPerM">T, N/m; not negative.</param>
    /// <param name="thicknessM">h, m; greater than zero.</param>
    /// <param name="youngsModulusPa">E, Pa; greater than zero. BOPET about 4.5 GPa.</param>
    /// <param name="poissonRatio">nu; above -1, at most 0.5. BOPET 0.37 to 0.44, from memory.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double Strain(double tensionNPerM, double thicknessM, double youngsModulusPa, double poissonRatio) =>
        (1 - Require.PoissonRatio(poissonRatio)) * StressPa(tensionNPerM, thicknessM) / Require.Positive(youngsModulusPa);

    /// <summary>Share of the yield stress that is used up, without unit. The limit for a warning belongs to the route.</summary>
    /// <param name="stressPa">Stress, Pa; not negative.</param>
    /// <param name="yieldStressPa">Yield stress of the film, Pa; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double ShareOfYield(double stressPa, double yieldStressPa) =>
        Require.NotNegative(stressPa) / Require.Positive(yieldStressPa);
}
