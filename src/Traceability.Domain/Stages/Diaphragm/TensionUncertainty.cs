using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>
/// Relative standard uncertainties of resonance and tension, first-order propagation of independent inputs.
/// </summary>
/// <remarks>
/// In vacuo T = sigma (2 pi a f / j01)^2: u(T)^2 = (2 u_f)^2 + (2 u_a)^2 + u_sigma^2, and f: u(f)^2 = (u_T/2)^2 + (u_sigma/2)^2 +
/// u_a^2. In air T = (2 pi a f / j01)^2 (sigma + Gamma rho a); with the air's share of the mass s = Gamma rho a / (sigma + Gamma rho a)
/// the sensitivities are 2 for f, 2 + s for a, 1 - s for sigma, s for Gamma and s for rho. Source: JCGM 100 (GUM), 5.1. Checks:
/// published values F19, <c>TensionUncertaintyTests</c> (numerical differentiation).
/// </remarks>
public static class TensionUncertainty
{
    /// <summary>u(T)/T in vacuo, without unit.</summary>
    /// <param name="resonance">u(f)/f; not negative.</param>
    /// <param name="radius">u(a)/a; not negative.</param>
    /// <param name="arealDensity">u(sigma)/sigma; not negative.</param>
    /// <exception cref="ArgumentOutOfRangeException">A negative input, or NaN.</exception>
    public static double OfTensionInVacuo(double resonance, double radius, double arealDensity) =>
        OfTensionInAir(0, new(resonance, radius, arealDensity, 0, 0));

    /// <summary>u(T)/T in air, without unit.</summary>
    /// <param name="airShareOfMass">s, share of the co-moving air in the mass, see <see cref="AirShareOfMass"/>; 0 to 1.</param>
    /// <param name="inputs">Relative standard uncertainties of the inputs.</param>
    /// <exception cref="ArgumentOutOfRangeException">A share outside 0 to 1, a negative uncertainty, or NaN.</exception>
    public static double OfTensionInAir(double airShareOfMass, TensionInputUncertainties inputs)
    {
        var s = Require.Within(airShareOfMass, 0, 1);
        return RootSumOfSquares(
            2 * Require.NotNegative(inputs.Resonance),
            (2 + s) * Require.NotNegative(inputs.Radius),
            (1 - s) * Require.NotNegative(inputs.ArealDensity),
            s * Require.NotNegative(inputs.AirLoad),
            s * Require.NotNegative(inputs.AirDensity)
        );
    }

    /// <summary>s = Gamma mu / (1 + Gamma mu), without unit.</summary>
    /// <param name="airLoadCoefficient">Gamma; not negative.</param>
    /// <param name="massRatio">mu = rho a / sigma; not negative.</param>
    /// <exception cref="ArgumentOutOfRangeException">A negative input, or NaN.</exception>
    public static double AirShareOfMass(double airLoadCoefficient, double massRatio)
    {
        var air = Require.NotNegative(airLoadCoefficient) * Require.NotNegative(massRatio);
        return air / (1 + air);
    }

    /// <summary>u(f01)/f01 in vacuo, without unit, of a resonance computed from tension, areal density and radius.</summary>
    /// <param name="tension">u(T)/T; not negative.</param>
    /// <param name="arealDensity">u(sigma)/sigma; not negative.</param>
    /// <param name="radius">u(a)/a; not negative.</param>
    /// <exception cref="ArgumentOutOfRangeException">A negative input, or NaN.</exception>
    public static double OfResonanceInVacuo(double tension, double arealDensity, double radius) =>
        RootSumOfSquares(Require.NotNegative(tension) / 2, Require.NotNegative(arealDensity) / 2, Require.NotNegative(radius));

    private static double RootSumOfSquares(params ReadOnlySpan<double> parts)
    {
        var sum = 0.0;
        foreach (var part in parts)
            sum += part * part;
        return Math.Sqrt(sum);
    }
}

/// <summary>Relative standard uncertainties of what a tension is computed from.</summary>
/// <param name="Resonance">u(f)/f.</param>
/// <param name="Radius">u(a)/a.</param>
/// <param name="ArealDensity">u(sigma)/sigma.</param>
/// <param name="AirLoad">u(Gamma)/Gamma.</param>
/// <param name="AirDensity">u(rho)/rho.</param>
public readonly record struct TensionInputUncertainties(
    double Resonance,
    double Radius,
    double ArealDensity,
    double AirLoad,
    double AirDensity
);
