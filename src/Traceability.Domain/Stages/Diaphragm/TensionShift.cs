using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>How temperature and humidity move the tension of a film on its ring. Advice, not a correction to judge by.</summary>
/// <remarks>
/// Linear, elastic, slow. Above about 70 °C (glass transition of PET) tension is lost for good; creep after gluing is larger than either
/// shift. The swelling coefficient of BOPET, about 6e-6 per % RH, is from memory and doubtful within a factor of two: measure the lot.
/// Usual expansion, 1/K, from memory: brass 19e-6, aluminium 23.5e-6, steel 11e-6 to 17e-6, BOPET 17e-6.
/// Source: thin-film elasticity, equi-biaxial (Timoshenko, from memory). Checks: published values A7, A8.
/// </remarks>
public static class TensionShift
{
    /// <summary>
    /// Change of tension with temperature, N/m: dT = E h / (1 - nu) (alpha_ring - alpha_film) dt. Warmer ring, tighter film.
    /// </summary>
    /// <param name="film">Stiffness of the film.</param>
    /// <param name="changeK">dt, K, of ring and film together.</param>
    /// <param name="ringExpansionPerK">alpha of the ring, 1/K.</param>
    /// <param name="filmExpansionPerK">alpha of the film, 1/K.</param>
    /// <exception cref="ArgumentOutOfRangeException">A film without stiffness, or a value that is not finite.</exception>
    public static double ByTemperatureNPerM(FilmStiffness film, double changeK, double ringExpansionPerK, double filmExpansionPerK) =>
        film.BiaxialNPerM() * (Require.Finite(ringExpansionPerK) - Require.Finite(filmExpansionPerK)) * Require.Finite(changeK);

    /// <summary>Change of tension with humidity, N/m: dT = -E h / (1 - nu) beta dRH. The film swells, the tension falls.</summary>
    /// <param name="film">Stiffness of the film.</param>
    /// <param name="changePct">dRH, % RH.</param>
    /// <param name="swellingPerPct">beta, strain per % RH.</param>
    /// <exception cref="ArgumentOutOfRangeException">A film without stiffness, or a value that is not finite.</exception>
    public static double ByHumidityNPerM(FilmStiffness film, double changePct, double swellingPerPct) =>
        -film.BiaxialNPerM() * Require.Finite(swellingPerPct) * Require.Finite(changePct);

    /// <summary>Relative change of the resonance: sqrt(1 + dT/T0) - 1. Null when the film goes slack (dT at or below -T0).</summary>
    /// <param name="tensionNPerM">T0, N/m; greater than zero.</param>
    /// <param name="changeNPerM">dT, N/m.</param>
    /// <exception cref="ArgumentOutOfRangeException">A tension that is not positive, or a value that is not finite.</exception>
    public static double? RelativeResonanceChange(double tensionNPerM, double changeNPerM)
    {
        var share = 1 + Require.Finite(changeNPerM) / Require.Positive(tensionNPerM);
        return share > 0 ? Math.Sqrt(share) - 1 : null;
    }
}

/// <summary>What the film opposes to being stretched.</summary>
/// <param name="YoungsModulusPa">E, Pa; BOPET about 4.5 GPa.</param>
/// <param name="PoissonRatio">nu; BOPET about 0.38, from memory.</param>
/// <param name="ThicknessM">h, m.</param>
public readonly record struct FilmStiffness(double YoungsModulusPa, double PoissonRatio, double ThicknessM)
{
    /// <summary>E h / (1 - nu), N/m: tension per unit of equi-biaxial strain.</summary>
    public double BiaxialNPerM() =>
        Require.Positive(YoungsModulusPa) * Require.Positive(ThicknessM) / (1 - Require.PoissonRatio(PoissonRatio));
}
