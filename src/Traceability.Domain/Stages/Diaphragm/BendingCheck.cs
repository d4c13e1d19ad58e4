using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>Whether the film is a membrane at all, or already a plate.</summary>
public static class BendingCheck
{
    /// <summary>Below this ratio bending is left out: it shifts the resonance by less than 0.05 %. Common practice, no source.</summary>
    public const double Negligible = 1e-3;

    /// <summary>Bending against tension, without unit: D j01^2 / (T a^2), D = E h^3 / (12 (1 - nu^2)).</summary>
    /// <param name="youngsModulusPa">E, Pa; greater than zero.</param>
    /// <param name="thicknessM">h, m; greater than zero.</param>
    /// <param name="poissonRatio">nu; above -1, at most 0.5.</param>
    /// <param name="tensionNPerM">T, N/m; greater than zero.</param>
    /// <param name="radiusM">a, m; greater than zero.</param>
    /// <remarks>Source: plate stiffness of Kirchhoff theory (Timoshenko, from memory). Check: published value A9-001.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double Ratio(double youngsModulusPa, double thicknessM, double poissonRatio, double tensionNPerM, double radiusM)
    {
        Require.PoissonRatio(poissonRatio);
        var stiffnessNm =
            Require.Positive(youngsModulusPa) * Math.Pow(Require.Positive(thicknessM), 3) / (12 * (1 - poissonRatio * poissonRatio));
        return stiffnessNm * Math.Pow(PhysicalConstants.FirstZeroOfJ0 / Require.Positive(radiusM), 2) / Require.Positive(tensionNPerM);
    }
}
