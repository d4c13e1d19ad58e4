using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.FilmLot;

/// <summary>
/// Mass per area of a metallised film: sigma = h rho of the base + sum of h_i rho_i of the layers, kg/m2.
/// </summary>
/// <remarks>
/// Fifty nanometres of gold on six micrometres of PET add 11.6 %, so the layers belong in the lot record. Thin sputtered layers may be
/// a few percent less dense than bulk metal. Geometry, no source needed; densities see <see cref="FilmMaterials"/>. Checks: published
/// values A3, <c>FilmLotTests</c>.
/// </remarks>
public static class ArealDensity
{
    /// <summary>From the layers, kg/m2.</summary>
    /// <param name="baseFilm">The base film; thickness and density greater than zero.</param>
    /// <param name="layers">What is on it; thickness not negative (a certificate may state none), density greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double FromLayers(FilmLayer baseFilm, params IReadOnlyList<FilmLayer> layers)
    {
        ArgumentNullException.ThrowIfNull(layers);
        var sum = Require.Positive(baseFilm.ThicknessM) * Require.Positive(baseFilm.DensityKgPerM3);
        foreach (var layer in layers)
            sum += Require.NotNegative(layer.ThicknessM) * Require.Positive(layer.DensityKgPerM3);
        return sum;
    }

    /// <summary>Gravimetric, kg/m2: sigma = m / (pi d^2 / 4) of a punched disc.</summary>
    /// <param name="massKg">m, kg; greater than zero.</param>
    /// <param name="diameterM">d, m; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double FromPunchedDisc(double massKg, double diameterM) =>
        Require.Positive(massKg) / (Math.PI * Math.Pow(Require.Positive(diameterM), 2) / 4);

    /// <summary>Departure of the weighed from the computed value, without unit: weighed / computed - 1.</summary>
    /// <param name="weighedKgPerM2">Gravimetric value, kg/m2; greater than zero.</param>
    /// <param name="computedKgPerM2">Value from the layers, kg/m2; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double RelativeDeparture(double weighedKgPerM2, double computedKgPerM2) =>
        Require.Positive(weighedKgPerM2) / Require.Positive(computedKgPerM2) - 1;
}
