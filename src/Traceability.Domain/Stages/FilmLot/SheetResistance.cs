using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.FilmLot;

/// <summary>What a sheet resistance says about the thickness of the metal on the film.</summary>
public enum SheetResistancePlausibility
{
    /// <summary>Between the bulk value and a few times that, as thin sputtered layers are.</summary>
    Plausible,

    /// <summary>Below bulk resistivity over the stated thickness: the layer is thicker than stated, or the reading is wrong.</summary>
    LayerThickerThanStated,

    /// <summary>Far above it: the layer is thinner than stated, broken up or scratched.</summary>
    LayerThinnerOrBroken,
}

/// <summary>
/// Sheet resistance of the metal layer: R = rho / t, ohms per square; rho resistivity, ohm metre; t thickness, m.
/// </summary>
/// <remarks>
/// Layers thinner than the electron's free path (about 38 nm in gold) conduct worse than bulk metal: 1 to 4 times the bulk value is
/// taken as plausible (common practice, no source; the theory is that of Fuchs and Sondheimer). Checks: <c>FilmLotTests</c>.
/// </remarks>
public static class SheetResistance
{
    /// <summary>Times the bulk value that is still plausible. Common practice, no source.</summary>
    public const double PlausibleFactor = 4;

    /// <summary>Sheet resistance of a layer with bulk resistivity, ohms per square: the least that the thickness can give.</summary>
    /// <param name="resistivityOhmM">rho, ohm metre; greater than zero.</param>
    /// <param name="thicknessM">t, m; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input that is not positive, or NaN.</exception>
    public static double BulkOhmPerSquare(double resistivityOhmM, double thicknessM) =>
        Require.Positive(resistivityOhmM) / Require.Positive(thicknessM);

    /// <summary>Whether a reading fits the stated layer. 2 % below bulk still counts as plausible, for the reading's own error.</summary>
    /// <param name="measuredOhmPerSquare">Reading, ohms per square; greater than zero.</param>
    /// <param name="resistivityOhmM">Bulk resistivity of the metal, ohm metre; greater than zero.</param>
    /// <param name="thicknessM">Stated thickness, m; greater than zero.</param>
    /// <param name="plausibleFactor">Times the bulk value that is still plausible; at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static SheetResistancePlausibility Judge(
        double measuredOhmPerSquare,
        double resistivityOhmM,
        double thicknessM,
        double plausibleFactor = PlausibleFactor
    )
    {
        Require.Within(plausibleFactor, 1, double.MaxValue);
        var timesBulk = Require.Positive(measuredOhmPerSquare) / BulkOhmPerSquare(resistivityOhmM, thicknessM);
        return timesBulk < 0.98 ? SheetResistancePlausibility.LayerThickerThanStated
            : timesBulk > plausibleFactor ? SheetResistancePlausibility.LayerThinnerOrBroken
            : SheetResistancePlausibility.Plausible;
    }
}
