using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Capsule;

/// <summary>
/// Capacitance of one side of a capsule and the gap behind it: C = eps0 A / d.
/// </summary>
/// <remarks>
/// Full, flat electrode without holes, fringe field and the 1.0006 of air left out; for a drilled electrode take an effective area.
/// Where the plastic side of the film faces the electrode the electrical gap is d + h / eps_r, eps_r of PET about 3.3. Source: the
/// parallel-plate capacitor. Checks: published values B1, B8, <c>CapsuleTests</c>.
/// </remarks>
public static class CapsuleCapacitance
{
    /// <summary>Capacitance of a flat film, F: eps0 pi a^2 / d.</summary>
    /// <param name="radiusM">a, m; greater than zero.</param>
    /// <param name="gapM">d, m; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double OfFlatFilmF(double radiusM, double gapM) =>
        PhysicalConstants.VacuumPermittivityFPerM * Math.PI * Require.Positive(radiusM) * radiusM / Require.Positive(gapM);

    /// <summary>Capacitance of a film sunk towards the electrode as a parabola, F: (eps0 pi a^2 / w0) ln(d / (d - w0)).</summary>
    /// <param name="radiusM">a, m; greater than zero.</param>
    /// <param name="gapM">d, m, at the rim; greater than zero.</param>
    /// <param name="centreDeflectionM">w0, m; below the gap, negative for a film that bulges away.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double OfDeflectedFilmF(double radiusM, double gapM, double centreDeflectionM)
    {
        Require.Positive(gapM);
        if (!(Require.Finite(centreDeflectionM) < gapM))
            throw new ArgumentOutOfRangeException(nameof(centreDeflectionM), centreDeflectionM, "must be below the gap");
        var share = centreDeflectionM / gapM;
        // For a share near zero the quotient loses its digits; its series is 1 + share/2 + share^2/3.
        var factor = Math.Abs(share) < 1e-5 ? 1 + share / 2 + share * share / 3 : -double.LogP1(-share) / share;
        return OfFlatFilmF(radiusM, gapM) * factor;
    }

    /// <summary>Gap from a measured capacitance, m: d = eps0 A / (C - C_stray).</summary>
    /// <param name="capacitanceF">C, F; above the stray capacitance.</param>
    /// <param name="strayF">C_stray of leads and fixture, F; not negative.</param>
    /// <param name="areaM2">A, effective electrode area, m2; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double GapM(double capacitanceF, double strayF, double areaM2)
    {
        var film = Require.Finite(capacitanceF) - Require.NotNegative(strayF);
        if (!(film > 0))
            throw new ArgumentOutOfRangeException(nameof(capacitanceF), capacitanceF, "must be above the stray capacitance");
        return PhysicalConstants.VacuumPermittivityFPerM * Require.Positive(areaM2) / film;
    }

    /// <summary>Electrical gap when the plastic side of the film faces the electrode, m: d + h / eps_r.</summary>
    /// <param name="airGapM">d, m; greater than zero.</param>
    /// <param name="filmThicknessM">h, m; not negative.</param>
    /// <param name="relativePermittivity">eps_r of the film; at least 1 (PET about 3.3).</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double ElectricalGapM(double airGapM, double filmThicknessM, double relativePermittivity = 3.3) =>
        Require.Positive(airGapM) + Require.NotNegative(filmThicknessM) / Require.Within(relativePermittivity, 1, 1e6);

    /// <summary>Loss by stray capacitance, dB: 20 lg(C / (C + C_stray)).</summary>
    /// <param name="capacitanceF">C of the capsule, F; greater than zero.</param>
    /// <param name="strayF">C_stray, F; not negative.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double StrayLossDb(double capacitanceF, double strayF) =>
        20 * Math.Log10(Require.Positive(capacitanceF) / (capacitanceF + Require.NotNegative(strayF)));

    /// <summary>Asymmetry of the two sides, without unit: (C_front - C_rear) / mean. A bad stack shows here.</summary>
    /// <param name="frontF">C of the front, F; greater than zero.</param>
    /// <param name="rearF">C of the rear, F; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double Asymmetry(double frontF, double rearF) =>
        2 * (Require.Positive(frontF) - Require.Positive(rearF)) / (frontF + rearF);
}
