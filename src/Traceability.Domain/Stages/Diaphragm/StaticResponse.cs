using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>
/// A membrane under even pressure: w(r) = p (a^2 - r^2) / (4 T).
/// </summary>
/// <remarks>
/// p pressure, Pa; a active radius, m; T tension, N/m. Small deflection, tension not changed by it, no field. Source: Poisson's
/// equation on a disc (Morse and Ingard, Theoretical Acoustics, from memory). Checks: published values A10.
/// </remarks>
public static class StaticResponse
{
    /// <summary>Deflection at the centre, m: p a^2 / (4 T). Signed like the pressure.</summary>
    /// <param name="pressurePa">p, Pa.</param>
    /// <param name="radiusM">a, m; greater than zero.</param>
    /// <param name="tensionNPerM">T, N/m; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A radius or tension that is not positive, or a value that is not finite.</exception>
    public static double CentreM(double pressurePa, double radiusM, double tensionNPerM) =>
        Require.Finite(pressurePa) * Require.Positive(radiusM) * radiusM / (4 * Require.Positive(tensionNPerM));

    /// <summary>Mean deflection, m: p a^2 / (8 T), half of that at the centre.</summary>
    /// <param name="pressurePa">p, Pa.</param>
    /// <param name="radiusM">a, m; greater than zero.</param>
    /// <param name="tensionNPerM">T, N/m; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A radius or tension that is not positive, or a value that is not finite.</exception>
    public static double MeanM(double pressurePa, double radiusM, double tensionNPerM) => CentreM(pressurePa, radiusM, tensionNPerM) / 2;

    /// <summary>Acoustic compliance, m5/N: volume displaced per pressure, pi a^4 / (8 T).</summary>
    /// <param name="radiusM">a, m; greater than zero.</param>
    /// <param name="tensionNPerM">T, N/m; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double AcousticComplianceM5PerN(double radiusM, double tensionNPerM) =>
        Math.PI * Math.Pow(Require.Positive(radiusM), 4) / (8 * Require.Positive(tensionNPerM));
}
