using MathNet.Numerics;
using MathNet.Numerics.RootFinding;
using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>
/// Resonances of a membrane in vacuo: f_mn = j_mn / (2 pi a) sqrt(T / sigma).
/// </summary>
/// <remarks>
/// j_mn n-th zero of the Bessel function J_m; a active radius, m; T tension, N/m; sigma areal density, kg/m2. Ideal membrane: no
/// bending, no air, no field. The ratios help to recognise a wrongly picked peak: one at 1.59 times the fundamental is f11, and when it
/// splits in two the tension is uneven. Sources: Rayleigh, Theory of Sound I, sections 200 ff.; zeros of Abramowitz and Stegun, table
/// 9.5 (from memory). Checks: published values A1, <c>BesselZeroTableTests</c>.
/// </remarks>
public static class MembraneModes
{
    /// <summary>j_mn, the n-th positive zero of J_m, without unit.</summary>
    /// <param name="diameters">m, number of nodal diameters; 0 to 20.</param>
    /// <param name="circles">n, number of nodal circles with the rim; 1 to 50.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count outside these ranges.</exception>
    public static double BesselZero(int diameters, int circles)
    {
        Require.Within(diameters, 0, 20);
        Require.Within(circles, 1, 50);
        // Zeros lie at least 2.4 apart and the first one above m, so half steps cannot jump over a pair.
        const double step = 0.5;
        double from = Math.Max(diameters, step);
        for (var found = 0; ; from += step)
        {
            if (Bessel(from) * Bessel(from + step) > 0)
                continue;
            if (++found == circles)
                return Brent.FindRoot(Bessel, from, from + step, 1e-14);
        }

        double Bessel(double x) => SpecialFunctions.BesselJ(diameters, x);
    }

    /// <summary>f_mn / f01 = j_mn / j01, without unit.</summary>
    /// <param name="diameters">m; 0 to 20.</param>
    /// <param name="circles">n; 1 to 50.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count outside these ranges.</exception>
    public static double RatioToFundamental(int diameters, int circles) => BesselZero(diameters, circles) / PhysicalConstants.FirstZeroOfJ0;

    /// <summary>f01 in vacuo, Hz.</summary>
    /// <param name="radiusM">a, m; greater than zero.</param>
    /// <param name="tensionNPerM">T, N/m; greater than zero.</param>
    /// <param name="arealDensityKgPerM2">sigma, kg/m2; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double FundamentalHz(double radiusM, double tensionNPerM, double arealDensityKgPerM2) =>
        PhysicalConstants.FirstZeroOfJ0
        / (2 * Math.PI * Require.Positive(radiusM))
        * Math.Sqrt(Require.Positive(tensionNPerM) / Require.Positive(arealDensityKgPerM2));

    /// <summary>f01 in air, Hz: the one in vacuo over sqrt(1 + Gamma mu), see <see cref="AirLoad"/>.</summary>
    /// <param name="radiusM">a, m; greater than zero.</param>
    /// <param name="tensionNPerM">T, N/m; greater than zero.</param>
    /// <param name="arealDensityKgPerM2">sigma, kg/m2; greater than zero.</param>
    /// <param name="airDensityKgPerM3">rho, kg/m3; not negative.</param>
    /// <param name="airLoadCoefficient">Gamma; not negative.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double FundamentalInAirHz(
        double radiusM,
        double tensionNPerM,
        double arealDensityKgPerM2,
        double airDensityKgPerM3,
        double airLoadCoefficient
    ) =>
        FundamentalHz(radiusM, tensionNPerM, arealDensityKgPerM2)
        * AirLoad.FrequencyRatio(airLoadCoefficient, AirLoad.MassRatio(airDensityKgPerM3, radiusM, arealDensityKgPerM2));
}
